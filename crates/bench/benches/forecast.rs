//! How long a forecast, a thousand draws, a solve and a whole book take, beside SciPy and NumPy in the same run.
//!
//! `cargo bench -p bench --bench forecast`. The comparison wants a Python with SciPy, named by `PYTHON` or found
//! at `target/venv/bin/python`; without one only our own times are shown. Nothing here passes or fails.

// A benchmark reads files and the clock, starts the program it compares with, and prints.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout, missing_docs)]

use bench::draws::spread;
use bench::forecast::{Surroundings, foresee, rises};
use bench::rules;
use bench::target::{When, yeast_for};
use formula::source::Source;
use formula::{Book, BookText, Formula};
use quantity::TimeSpan;
use rayon::prelude::*;
use std::hint::black_box;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

fn main() {
    let text = demo();
    let book = Book::open(text.clone()).value;
    let around = Surroundings::of(&book.kitchen());
    let muffins = book.formula("potato-muffins").expect("the demo").value;
    let whole = best(40, || drop(black_box(foresee(black_box(&muffins), &around))));
    println!("a whole forecast of potato-muffins: {:.2} ms (wanted: under 12 ms)", whole * 1e3);
    let rising = best(40, || drop(black_box(rises(black_box(&muffins), &around))));
    println!("  of it three fermentations: {:.2} ms", rising * 1e3);
    let raw = without_cooking(muffins.clone());
    let draws = best(5, || drop(black_box(spread(black_box(&raw), &around, 1000, 1))));
    println!("1,000 draws of its fermentations: {:.0} ms on all cores (wanted: under 150 ms)", draws * 1e3);
    let cooked = best(3, || drop(black_box(spread(black_box(&muffins), &around, 1000, 1))));
    println!("  with every tenth cooked as well: {:.0} ms", cooked * 1e3);
    let wanted = When::Ripe(TimeSpan::hours(10.0));
    let solved = best(10, || drop(black_box(yeast_for(black_box(&muffins), "sponge", wanted, &around))));
    println!("a solve for its dose of yeast: {:.0} ms (wanted: under 100 ms)", solved * 1e3);
    let (small, large) = (proof_read(&text, 100), proof_read(&text, 1000));
    println!("1,000 formulas forecast and proof-read: {large:.2} s on all cores (wanted: under 8 s)");
    println!("  growth from 100 to 1,000: {:.1} times (10 is linear)", large / small);
    compare(whole, rising, draws);
}

/// The same fermentations by SciPy's fastest method, and the same cook in NumPy, run now: a day's preferment three
/// times, and a cake on a griddle turned once.
fn compare(whole: f64, rising: f64, draws: f64) {
    let lines = python("fermentation.py", &["1e-6"]);
    let preferments = lines.iter().filter(|line| line.starts_with("preferment "));
    let seconds = preferments.filter_map(|line| line.split_whitespace().nth(2)?.parse::<f64>().ok());
    let cook = python("griddle.py", &[]).first().and_then(|line| line.split_whitespace().next()?.parse::<f64>().ok());
    let (Some(ferment), Some(cook)) = (seconds.reduce(f64::min), cook) else {
        println!("no Python with SciPy found; nothing to compare with");
        return;
    };
    let theirs = 3.0 * ferment + cook;
    println!(
        "SciPy's three fermentations and NumPy's cook: {:.0} ms; {:.0} times our whole forecast (wanted: 50)",
        theirs * 1e3,
        theirs / whole
    );
    println!(
        "  the three fermentations alone: {:.0} ms; {:.0} times ours, charts and bands with them",
        3e3 * ferment,
        3.0 * ferment / rising
    );
    println!(
        "  a thousand times the three: {:.0} s; {:.0} times our 1,000 draws (wanted: 50)",
        3e3 * ferment,
        3e3 * ferment / draws
    );
}

fn python(script: &str, arguments: &[&str]) -> Vec<String> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let python = std::env::var("PYTHON").map_or_else(|_| root.join("target/venv/bin/python"), PathBuf::from);
    let script = root.join("crates/science/benches").join(script);
    let output = Command::new(python).arg(script).args(arguments).output();
    output.map(|output| String::from_utf8_lossy(&output.stdout).lines().map(str::to_owned).collect()).unwrap_or_default()
}

/// The best of many runs, in seconds.
fn best(runs: u32, run: impl Fn()) -> f64 {
    let timed = |_| {
        let begun = Instant::now();
        run();
        begun.elapsed().as_secs_f64()
    };
    (0..runs).map(timed).fold(f64::INFINITY, f64::min)
}

/// Pieces whose thickness nobody states are not cooked.
fn without_cooking(mut formula: Formula) -> Formula {
    formula.components.iter_mut().for_each(|component| component.yields.thickness = None);
    formula
}

/// A book of so many formulas, made of the demo's, forecast by the rules that judge by it.
fn proof_read(demo: &BookText, formulas: usize) -> f64 {
    let mut text = demo.clone();
    let own: Vec<Source> = demo.files.iter().filter(|(file, _)| file.starts_with("formulas/")).map(|(_, s)| s.clone()).collect();
    for number in 0..formulas.saturating_sub(own.len()) {
        let source = &own[number % own.len()];
        let file = format!("formulas/copy-{number}.toml");
        text.files.insert(file.clone(), Source { file: file.into(), text: source.text.clone() });
    }
    let book = Book::open(text).value;
    let (kitchen, names) = (book.kitchen(), book.formulas.keys().collect::<Vec<_>>());
    best(2, || {
        names.par_iter().for_each(|name| {
            let formula = book.formula(name).expect("a formula").value;
            black_box(rules::proof_read(&formula, &kitchen, &book.settings));
        });
    })
}

fn demo() -> BookText {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/saltmarsh");
    let mut text = BookText::default();
    for part in ["", "kitchens", "ingredients", "formulas"] {
        for entry in std::fs::read_dir(folder.join(part)).expect("the demo book").flatten() {
            let path = entry.path();
            if path.extension().is_some_and(|end| end == "toml" || end == "csv") {
                let name = path.file_name().expect("a name").to_string_lossy().into_owned();
                let file = if part.is_empty() { name } else { format!("{part}/{name}") };
                let content = std::fs::read_to_string(&path).expect("a file of the demo book");
                text.files.insert(file.clone(), Source { file: file.into(), text: content });
            }
        }
    }
    text
}
