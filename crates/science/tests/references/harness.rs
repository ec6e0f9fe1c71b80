//! Reads `reference/<group>/*.toml` and holds equations to the points in them.
//!
//! A reference file names its equation, where its values come from, how they were obtained, the
//! tolerance with its reason, and points: inputs by symbol and the expected output, or several.
//! `kind = "cross-check"` says that the values are our own algebra or prototype of the same formula;
//! with OUTSIDE_ONLY in the environment those are let pass, which shows what the others hold alone.

use std::collections::BTreeMap;
use std::path::Path;
use toml::{Table, Value};

/// The inputs of one point, by symbol.
pub struct Inputs<'a>(&'a Table);

impl Inputs<'_> {
    /// A number by its symbol.
    pub fn number(&self, symbol: &str) -> f64 {
        as_number(self.0.get(symbol).unwrap_or_else(|| panic!("the point has no {symbol}")))
            .unwrap_or_else(|| panic!("{symbol} is no number"))
    }
    /// A word by its symbol.
    pub fn word(&self, symbol: &str) -> &str {
        self.0.get(symbol).and_then(Value::as_str).unwrap_or_else(|| panic!("the point has no word {symbol}"))
    }
    /// A number by its symbol, or another where the point leaves it out.
    pub fn number_or(&self, symbol: &str, otherwise: f64) -> f64 {
        self.0.get(symbol).and_then(as_number).unwrap_or(otherwise)
    }
}

fn as_number(value: &Value) -> Option<f64> {
    value.as_float().or_else(|| value.as_integer().map(|n| n as f64))
}

/// An equation's name and how it answers a point: the output by its symbol.
pub type Case = (&'static str, fn(&Inputs, &str) -> f64);

/// One reference file's outcome, a row of the published table.
#[derive(Debug)]
pub struct Row {
    pub equation: String,
    pub source: String,
    pub place: String,
    pub obtained: String,
    pub points: usize,
    pub worst: f64,
    pub tolerance: String,
    pub because: String,
    /// Our own algebra or prototype of the same formula: no outside reference.
    pub cross_check: bool,
}

/// Checks every reference file of a group and gives the rows; panics with every point that is off.
pub fn check(group: &str, cases: &[Case]) -> Vec<Row> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference").join(group);
    let cases: BTreeMap<_, _> = cases.iter().copied().collect();
    let mut rows = Vec::new();
    let mut off = Vec::new();
    let mut files: Vec<_> = std::fs::read_dir(&folder).map(|dir| dir.flatten().map(|e| e.path()).collect()).unwrap_or_default();
    files.retain(|file: &std::path::PathBuf| file.extension().is_some_and(|end| end == "toml"));
    files.sort();
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a readable reference file");
        let table: Table = text.parse().unwrap_or_else(|fault| panic!("{}: {fault}", file.display()));
        rows.push(check_file(&file.display().to_string(), &table, &cases, &mut off));
    }
    assert!(off.is_empty(), "{} points are off:\n{}", off.len(), off.join("\n"));
    rows
}

fn check_file(file: &str, table: &Table, cases: &BTreeMap<&str, fn(&Inputs, &str) -> f64>, off: &mut Vec<String>) -> Row {
    let word = |key: &str| table.get(key).and_then(Value::as_str).unwrap_or_else(|| panic!("{file} has no {key}")).to_owned();
    let equation = word("equation");
    let outputs = outputs(&table["output"]);
    let cross_check = match table.get("kind").map(|kind| kind.as_str()) {
        None => false,
        Some(Some("cross-check")) => true,
        Some(other) => panic!("{file}: {other:?} is no kind of reference"),
    };
    let compute = cases.get(equation.as_str()).unwrap_or_else(|| panic!("{file}: no case computes {equation}"));
    let tolerance = table.get("tolerance").and_then(Value::as_table).unwrap_or_else(|| panic!("{file} has no tolerance"));
    let limit = |key: &str| tolerance.get(key).and_then(as_number);
    let (absolute, relative) = (limit("absolute"), limit("relative"));
    assert!(absolute.is_some() || relative.is_some(), "{file}: the tolerance is neither absolute nor relative");
    let points = table.get("points").and_then(Value::as_array).unwrap_or_else(|| panic!("{file} has no points"));
    let mut worst: f64 = 0.0;
    let asked = points.iter().map(|point| point.as_table().expect("a point is a table"));
    let asked: Vec<_> =
        asked.flat_map(|point| outputs.iter().filter_map(move |output| Some((point, output, point.get(output)?)))).collect();
    assert!(asked.len() >= points.len(), "{file}: a point expects nothing");
    for (point, output, expected) in &asked {
        let expected = as_number(expected).expect("the expected output is a number");
        let got = compute(&Inputs(point), output);
        let error = (got - expected).abs();
        let allowed = absolute.unwrap_or(0.0).max(relative.unwrap_or(0.0) * expected.abs());
        worst = worst.max(if relative.is_some() && expected != 0.0 { error / expected.abs() } else { error });
        if (error.is_nan() || error > allowed) && !(cross_check && std::env::var_os("OUTSIDE_ONLY").is_some()) {
            off.push(format!("{file}: {point:?}: {output} is {got}, allowed ±{allowed}"));
        }
    }
    let shown = |value: Option<f64>, suffix: &str| value.map(|v| format!("±{}{suffix}", (v * 1e9).round() / 1e9));
    Row {
        equation,
        source: word("source"),
        place: word("place"),
        obtained: word("obtained"),
        points: asked.len(),
        worst,
        tolerance: [shown(absolute, ""), shown(relative.map(|r| r * 100.0), " %")]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(" or "),
        because: tolerance
            .get("because")
            .and_then(Value::as_str)
            .unwrap_or_else(|| panic!("{file}: no reason for the tolerance"))
            .to_owned(),
        cross_check,
    }
}

/// The symbols that a file's points give expected values of.
fn outputs(value: &Value) -> Vec<String> {
    let several = value.as_array().cloned().unwrap_or_else(|| vec![value.clone()]);
    several.iter().map(|output| output.as_str().expect("an output is a symbol").to_owned()).collect()
}
