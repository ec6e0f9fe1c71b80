//! How fast a book is proof-read, beside a plain reference in the same run.
//!
//! `cargo bench -p app --bench book` prints seconds and ratios; nothing here passes or fails.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout, missing_docs)]

mod generated;

use bench::forecast::Surroundings;
use bench::target::{Amount, Asked, Ready, When, solve};
use formula::arithmetic::{figures, mixture, overall};
use formula::source::Source;
use formula::{Book, BookText};
use generated::generated;
use quantity::{Fraction, TimeSpan};
use rayon::prelude::*;
use std::hint::black_box;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

fn main() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    one_formula(&root);
    solves(&root);
    let small = whole_book(&root, 1_000);
    let large = whole_book(&root, 10_000);
    println!("growth from 1,000 to 10,000 formulas: {:.1} times (10 is linear)", large / small);
}

/// Reading, resolving and working out one demo formula.
fn one_formula(root: &Path) {
    let example = root.join("examples/saltmarsh");
    let mut text = BookText::default();
    for file in ["book.toml", "ingredients/mill.toml", "ingredients/culture.toml", "formulas/potato-muffins.toml"] {
        let source = Source { file: file.into(), text: std::fs::read_to_string(example.join(file)).expect("the demo book") };
        text.files.insert(file.to_owned(), source);
    }
    let book = Book::open(text).value;
    let rounds = 500;
    let begun = Instant::now();
    for _ in 0..rounds {
        let formula = book.formula(black_box("potato-muffins")).expect("the formula").value;
        for c in 0..formula.components.len() {
            let overall = overall(&formula, c);
            black_box((figures(&overall), mixture(&formula, c)));
        }
    }
    let each = begun.elapsed().as_secs_f64() / f64::from(rounds);
    println!("one demo formula read, resolved and worked out: {:.3} ms (wanted: under 1 ms)", each * 1e3);
}

/// Questions asked backwards of a demo formula, from the question to the formula's new text.
fn solves(root: &Path) {
    let example = root.join("examples/saltmarsh");
    let mut text = BookText::default();
    for file in ["book.toml", "ingredients/mill.toml", "ingredients/culture.toml", "formulas/potato-muffins.toml"] {
        let source = Source { file: file.into(), text: std::fs::read_to_string(example.join(file)).expect("the demo book") };
        text.files.insert(file.to_owned(), source);
    }
    let book = Book::open(text).value;
    let around = Surroundings::of(&book.kitchen());
    let said = |to: &str| Asked { to: Some(to.to_owned()), ..Asked::default() };
    let ripe = Asked {
        stage: Some("sponge".to_owned()),
        ready: Some(Ready::After(When::Ripe(TimeSpan::hours(10.0)))),
        ..Asked::default()
    };
    let risen = Asked {
        stage: Some("dough".to_owned()),
        ready: Some(Ready::After(When::Risen(TimeSpan::hours(3.0)))),
        ..Asked::default()
    };
    let aims = [("salt", 2.0), ("fat", 10.0), ("sugars", 7.0)]
        .map(|(name, share)| (name.to_owned(), Amount::Share(Fraction::percent(share))));
    for (target, asked) in [
        ("yeast", ripe),
        ("yeast", risen),
        (
            "begin",
            Asked { stage: Some("sponge".to_owned()), ready: Some(Ready::RipeAt(TimeSpan::hours(7.5))), ..Asked::default() },
        ),
        ("water", Asked { stage: Some("dough".to_owned()), ..said("25 °C") }),
        ("flour", Asked { stage: Some("dough".to_owned()), with: Some("flour-cake".to_owned()), ..said("10.5 %") }),
        ("syrup", said("65 Brix")),
        ("batch", said("4 l")),
        ("price", said("2.60 EUR")),
        ("price", Asked { of: Some("batch".to_owned()), ..said("2 EUR") }),
        ("reformulate", Asked { aims: aims.to_vec(), ..Asked::default() }),
    ] {
        let begun = Instant::now();
        for _ in 0..10 {
            black_box(solve(target, &book, "potato-muffins", &around, black_box(&asked)).expect("an answer"));
        }
        println!("solve {target}: {:.1} ms (wanted: under 100 ms)", begun.elapsed().as_secs_f64() * 100.0);
    }
}

/// `check` of a generated book, with the plain reference on the same files.
fn whole_book(root: &Path, formulas: usize) -> f64 {
    let book = generated(root, formulas);
    let program = env!("CARGO_BIN_EXE_wellproved");
    let seconds = (0..3).map(|_| run(program, &book)).fold(f64::INFINITY, f64::min);
    let memory = peak_memory(program, &book);
    println!("check of {formulas} formulas, rules of the trade included: {seconds:.3} s, {memory:.0} MB at the most");
    let worked_out = (0..3).map(|_| work_out(&book)).fold(f64::INFINITY, f64::min);
    println!("  reading, resolving and overall formulas alone: {worked_out:.3} s");
    let script = root.join("crates/app/benches/book/reference.py");
    let reference = Command::new("python3").arg(script).arg(&book).arg(root.join("crates/formula/data/ingredients")).output();
    match reference {
        Ok(output) if output.status.success() => {
            let text = String::from_utf8_lossy(&output.stdout);
            let theirs: f64 = text.split_whitespace().next().and_then(|word| word.parse().ok()).unwrap_or(f64::NAN);
            println!(
                "  the same by a plain Python reference: {theirs:.3} s, {:.1} times as long as that, {:.1} times as long as the whole check",
                theirs / worked_out,
                theirs / seconds
            );
        }
        _ => println!("  plain Python reference: python3 with tomllib is not here"),
    }
    seconds
}

/// What the reference does, on all cores: the files read, resolved, and each component's overall formula.
fn work_out(folder: &Path) -> f64 {
    let begun = Instant::now();
    let mut text = BookText::default();
    for part in ["ingredients", "kitchens", "formulas"] {
        for entry in std::fs::read_dir(folder.join(part)).expect("the generated book").flatten() {
            let file = format!("{part}/{}", entry.file_name().to_string_lossy());
            let source = Source { file: file.as_str().into(), text: std::fs::read_to_string(entry.path()).expect("a file") };
            text.files.insert(file, source);
        }
    }
    let book = Book::open(text).value;
    let names: Vec<&String> = book.formulas.keys().collect();
    names.par_iter().for_each(|name| {
        let formula = book.formula(name).expect("the formula").value;
        (0..formula.components.len()).for_each(|c| drop(black_box(overall(&formula, c))));
    });
    begun.elapsed().as_secs_f64()
}

fn run(program: &str, book: &Path) -> f64 {
    let begun = Instant::now();
    let output = Command::new(program).arg("check").arg(book).output().expect("the program runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stdout));
    begun.elapsed().as_secs_f64()
}

/// The most memory the program holds, by way of Python's resource module; NaN where there is none.
fn peak_memory(program: &str, book: &Path) -> f64 {
    let script = "import resource,subprocess,sys; subprocess.run(sys.argv[1:], capture_output=True); \
                  print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024)";
    let output = Command::new("python3").args(["-c", script, program, "check"]).arg(book).output();
    output.ok().and_then(|output| String::from_utf8_lossy(&output.stdout).trim().parse().ok()).unwrap_or(f64::NAN)
}
