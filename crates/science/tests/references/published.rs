//! The table of all equations with what they are held to, published in `docs/equations.md`.
//!
//! `UPDATE_DOCS=1 cargo test -p science --test references` writes it anew.

use crate::harness::Row;
use crate::{ferment, heat, keeping, leaven, measure, numeric, nutrition, sensory, sugar};
use science::{Equation, Standing};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use toml::Table;

const HEAD: &str = "# Every equation, and what it is held to\n\n\
Made from the program's own equations and the values in `crates/science/reference`. A reference is a published table or worked example, an \
independent formulation computed with a named package, or an exact limit: never what this program computed itself. A *cross-check* is our own \
algebra or prototype of the same formula: it shows that the formula is typed and solved as written, not that it is true. *Worst* is the largest \
deviation found, as a share of the value where the tolerance is a percentage. What is fitted or from memory says so.\n";

fn rows() -> BTreeMap<String, Vec<Row>> {
    let groups = [
        heat::rows(),
        ferment::rows(),
        sugar::rows(),
        keeping::rows(),
        leaven::rows(),
        measure::rows(),
        nutrition::rows(),
        sensory::rows(),
        numeric::rows(),
    ];
    let mut by_equation: BTreeMap<String, Vec<Row>> = BTreeMap::new();
    for row in groups.into_iter().flatten() {
        by_equation.entry(row.equation.clone()).or_default().push(row);
    }
    by_equation
}

fn folder() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Equations that nothing outside can be held to, with the reason.
fn without() -> Table {
    let text = std::fs::read_to_string(folder().join("reference/none.toml")).expect("reference/none.toml");
    text.parse().expect("reference/none.toml is TOML")
}

/// The sources of all groups by key.
fn sources() -> BTreeMap<String, Table> {
    let mut sources = BTreeMap::new();
    for entry in std::fs::read_dir(folder().join("sources")).expect("sources").flatten() {
        let text = std::fs::read_to_string(entry.path()).expect("a readable file");
        let table: Table = text.parse().unwrap_or_else(|fault| panic!("{}: {fault}", entry.path().display()));
        for (key, value) in table {
            let source = value.as_table().unwrap_or_else(|| panic!("{key} is no table")).clone();
            assert!(sources.insert(key.clone(), source).is_none(), "the source {key} stands twice");
        }
    }
    sources
}

fn in_words(source: &Table) -> String {
    let word = |key: &str| {
        source.get(key).map(|value| match value {
            toml::Value::Integer(number) => number.to_string(),
            other => other.as_str().unwrap_or_default().to_owned(),
        })
    };
    let parts = [
        word("author").or_else(|| word("authors")),
        word("title"),
        word("publisher"),
        word("year"),
        word("doi").map(|doi| format!("doi:{doi}")),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

pub const fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Published => "published",
        Standing::Fitted => "fitted",
        Standing::CommonPractice => "common practice, no source",
        Standing::FromMemory => "from memory",
    }
}

fn page() -> String {
    let (rows, without, sources) = (rows(), without(), sources());
    let mut page = HEAD.to_owned() + &bare(&rows, &without);
    let mut group = "";
    for equation in science::equations() {
        let own = equation.name.split("::").next().unwrap_or_default();
        if own != group {
            group = own;
            page.push_str(&format!("\n## {group}\n"));
        }
        page.push_str(&section(equation, rows.get(equation.name), &without, &sources));
    }
    page.push_str("\n## Sources\n\n");
    for (key, source) in &sources {
        page.push_str(&format!("- **{key}**: {}\n", in_words(source)));
    }
    page
}

/// How many equations there are, and which of them nothing outside holds.
fn bare(rows: &BTreeMap<String, Vec<Row>>, without: &Table) -> String {
    let points =
        |cross: bool| rows.values().flatten().filter(|row| row.cross_check == cross).map(|row| row.points).sum::<usize>();
    let mut text = format!(
        "\n{} equations are held to {} values from outside and cross-checked at {}.\n\n## Without an outside reference\n\n\
        | equation | why |\n|---|---|\n",
        science::equations().len(),
        points(false),
        points(true),
    );
    for (name, reason) in without {
        text.push_str(&format!("| {name} | {} |\n", reason.as_str().unwrap_or_default()));
    }
    let recalled =
        |row: &Row| row.obtained.contains("memory") && !row.obtained.contains("typed") && !row.obtained.contains("exact");
    let only_recalled = |rows: &Vec<Row>| {
        let mut outside = rows.iter().filter(|row| !row.cross_check).peekable();
        outside.peek().is_some() && outside.all(recalled)
    };
    let names: Vec<&str> = rows.iter().filter(|(_, rows)| only_recalled(rows)).map(|(name, _)| name.as_str()).collect();
    text.push_str(&format!("\nHeld to print from memory alone: {}.\n", names.join(", ")));
    text
}

fn section(equation: &Equation, rows: Option<&Vec<Row>>, without: &Table, sources: &BTreeMap<String, Table>) -> String {
    let source = sources.get(equation.source).map(in_words).unwrap_or_default();
    let valid: Vec<String> =
        equation.valid.iter().map(|valid| format!("{} {} to {} {}", valid.symbol, valid.from, valid.to, valid.unit)).collect();
    let mut text = format!("\n### {}\n\n{}; {source}, {}.", equation.name, standing(equation.standing), equation.place);
    if !valid.is_empty() {
        text.push_str(&format!(" Valid for {}.", valid.join(", ")));
    }
    text.push('\n');
    if let Some(reason) = without.get(equation.name).and_then(|reason| reason.as_str()) {
        text.push_str(&format!("\nNo outside reference: {reason}.\n"));
    }
    if let Some(rows) = rows {
        text.push_str("\n| held to | obtained | points | worst | tolerance | because |\n|---|---|---|---|---|---|\n");
        // What comes from outside stands first.
        for cross in [false, true] {
            rows.iter().filter(|row| row.cross_check == cross).for_each(|row| text.push_str(&line(row)));
        }
    }
    text
}

fn line(row: &Row) -> String {
    let kind = if row.cross_check { "*cross-check:* " } else { "" };
    let [source, place] = [&row.source, &row.place].map(|cell| cell.replace('|', "/"));
    let worst = format!("{:.2e}", row.worst);
    format!("| {kind}{source}, {place} | {} | {} | {worst} | {} | {} |\n", row.obtained, row.points, row.tolerance, row.because)
}

/// Holds a page of `docs` to what the program says now, or writes it anew where that is asked for.
pub fn fresh(page: &str, expected: &str) {
    let path = folder().join("../../docs").join(page);
    if std::env::var_os("UPDATE_DOCS").is_some() {
        std::fs::write(&path, expected).expect("a file");
    }
    let found = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(found == expected, "docs/{page} is stale: run UPDATE_DOCS=1 cargo test -p science --test references");
}

#[test]
fn the_table_is_fresh() {
    fresh("equations.md", &page());
}

#[test]
fn every_equation_has_an_outside_reference_or_says_why_not() {
    let (rows, without) = (rows(), without());
    let names: BTreeSet<&str> = science::equations().iter().map(|equation| equation.name).collect();
    let outside = |name: &str| rows.get(name).is_some_and(|rows| rows.iter().any(|row| !row.cross_check));
    let bare: Vec<&&str> = names.iter().filter(|name| !outside(name) && !without.contains_key(**name)).collect();
    assert!(bare.is_empty(), "nothing outside is held to {bare:?}, and reference/none.toml gives no reason");
    for name in without.keys() {
        assert!(names.contains(name.as_str()), "reference/none.toml names {name}, which is no equation");
        assert!(!outside(name), "{name} has a reference after all");
    }
}

#[test]
fn every_source_is_listed() {
    let sources = sources();
    for equation in science::equations() {
        assert!(sources.contains_key(equation.source), "{} names the source {}", equation.name, equation.source);
    }
    for row in rows().values().flatten() {
        assert!(sources.contains_key(&row.source), "a reference of {} names the source {}", row.equation, row.source);
    }
}
