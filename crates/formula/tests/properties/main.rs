//! What must hold of any formula, tried on formulas made up at random.
//!
//! No expected figure comes from a source: each check compares two ways of saying the same thing, or
//! a sum with its parts, as the baker's arithmetic has it.

mod faults;
mod invented;
mod masses;
mod percentages;

use formula::arithmetic::{Overall, RowKind, overall};
use formula::source::Source;
use formula::{Book, BookText, Checked, Formula, Severity};
use std::collections::BTreeMap;

/// Works a formula's text out, whatever is wrong with it.
fn worked_out(text: &str) -> Checked<Formula> {
    let source = Source { file: "formulas/x.toml".into(), text: text.to_owned() };
    let files = BTreeMap::from([("formulas/x.toml".to_owned(), source)]);
    Book::open(BookText { files }).value.formula("x").expect("the book's one formula")
}

/// Works out a text that must have no error.
#[track_caller]
fn sound(text: &str) -> Formula {
    let made = worked_out(text);
    let errors: Vec<String> =
        made.diagnostics.iter().filter(|found| found.severity == Severity::Error).map(|found| found.message.clone()).collect();
    assert!(errors.is_empty(), "{errors:?} in\n{text}");
    made.value
}

/// The rows of an overall formula by ingredient: gram, and share of the total flour.
fn rows(overall: &Overall) -> BTreeMap<String, (f64, f64)> {
    let rows = overall.rows.iter().map(|row| {
        let name = match &row.kind {
            RowKind::Flour(one) | RowKind::Ingredient(one) => one.name.clone(),
            RowKind::ReadyMade(title) => title.clone(),
        };
        (name, (row.mass.as_grams(), row.percent.map_or(0.0, |share| share.as_ratio())))
    });
    rows.collect()
}

/// Holds two overall formulas to be the same to the last digits.
#[track_caller]
fn same(one: &Formula, other: &Formula) {
    let (one, other) = (rows(&overall(one, 0)), rows(&overall(other, 0)));
    assert_eq!(one.keys().collect::<Vec<_>>(), other.keys().collect::<Vec<_>>());
    for (name, (grams, share)) in &one {
        let (grams_too, share_too) = other[name];
        assert!(
            near(*grams, grams_too) && near(*share, share_too),
            "{name}: {grams} g, {share} against {grams_too} g, {share_too}"
        );
    }
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * (1.0 + a.abs().max(b.abs()))
}
