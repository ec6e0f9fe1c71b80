//! Any bytes as a file of a book: read, bound, worked out, scaled; nothing may panic or hang.

#![no_main]

use formula::arithmetic::{Target, blend, factor, figures, mixture, overall, scaled, weighed};
use formula::source::Source;
use formula::{Book, BookText, Checked, Diagnostic, Formula};
use libfuzzer_sys::fuzz_target;
use quantity::{Count, Mass};
use std::collections::BTreeMap;

const SIMPLE: &str = include_str!("simple.toml");

fuzz_target!(|bytes: &[u8]| {
    let Some((first, rest)) = bytes.split_first() else { return };
    let file = match first % 8 {
        0 => "book.toml",
        1 => "ingredients/x.toml",
        2 => "kitchens/x.toml",
        3 => "trials/x.toml",
        4 => "trials/x.csv",
        _ => "formulas/x.toml",
    };
    let mut files = BTreeMap::new();
    let read = Source::from_bytes(file, rest.to_vec());
    assert!(read.value.is_some() || !read.diagnostics.is_empty(), "a file was refused without a word");
    let Some(source) = read.value else { return };
    files.insert("formulas/simple.toml".to_owned(), simple());
    files.insert(file.to_owned(), source);
    if file == "trials/x.csv" {
        let text = "title = \"x\"\nformula = \"simple\"\ndate = 2026-11-02\n[[rise]]\nstage = \"s\"\ncourse = \"x.csv\"\n";
        files.insert("trials/y.toml".to_owned(), Source { file: "trials/y.toml".into(), text: text.to_owned() });
    }
    let texts = files.clone();
    let book = Book::open(BookText { files });
    check_places(&texts, &book);
    let _ = book.value.kitchen();
    for name in book.value.formulas.keys() {
        let Some(made) = book.value.formula(name) else { continue };
        check_places(&texts, &made);
        let misplaced = book.value.misplaced(&made.value).collect();
        check_places(&texts, &Checked { value: (), diagnostics: misplaced });
        work_out(&made.value);
    }
});

/// A small formula that calls an ingredient and the formula under test, if they are there.
fn simple() -> Source {
    Source { file: "formulas/simple.toml".into(), text: SIMPLE.to_owned() }
}

/// Every fault must lie in a file that was given, and begin and end between letters.
fn check_places<T>(texts: &BTreeMap<String, Source>, checked: &Checked<T>) {
    let whole = |place: &formula::Place| {
        let text = &texts[&*place.file].text;
        text.get(place.span.clone()).is_some()
    };
    for found in &checked.diagnostics {
        assert!(whole(&found.place), "{} lies outside its file: {:?}", found.code, found.place);
        assert!(edits(found).all(|edit| whole(&edit.place)), "{} mends outside its file: {:?}", found.code, found.fix);
    }
}

fn edits(found: &Diagnostic) -> impl Iterator<Item = &formula::Edit> {
    found.fix.iter().flat_map(|fix| &fix.edits)
}

fn work_out(formula: &Formula) {
    for component in 0..formula.components.len() {
        let whole = overall(formula, component);
        let _ = figures(&whole);
        let _ = mixture(formula, component);
        let _ = weighed(formula, component);
    }
    let _ = blend(formula);
    let targets = [
        Target::Pieces(Count::pieces(7.0), Some(Mass::grams(80.0))),
        Target::Total(Mass::kilograms(3.0)),
        Target::Done(Mass::kilograms(3.0)),
        Target::Flour(Mass::grams(736.0)),
        Target::AtHand("egg-whole".to_owned(), Mass::grams(150.0)),
        Target::Factor(2.4),
    ];
    for target in &targets {
        if let Ok(factor) = factor(formula, target) {
            let large = scaled(formula, factor, Some(Mass::grams(90.0)));
            for component in 0..large.components.len() {
                let _ = figures(&overall(&large, component));
            }
        }
    }
}
