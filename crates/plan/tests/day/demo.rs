//! The demo book, and a day planned from it.

use bench::forecast::Surroundings;
use formula::source::Source;
use formula::{Book, BookText};
use jiff::ZonedDateTime;
use plan::day::{Refusal, Timeline, Wanted, Workplace, timeline};
use plan::engine::{Patient, Propagation};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::Arc;

/// The demo book.
pub fn book() -> Book {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/saltmarsh");
    let mut files = BTreeMap::new();
    for folder in ["", "formulas/", "kitchens/", "ingredients/"] {
        for entry in std::fs::read_dir(root.join(folder)).expect("a folder").flatten() {
            let name = format!("{folder}{}", entry.file_name().to_string_lossy());
            if name.ends_with(".toml") {
                let text = std::fs::read_to_string(entry.path()).expect("text");
                files.insert(name.clone(), Source { file: name.as_str().into(), text });
            }
        }
    }
    Book::open(BookText { files }).value
}

/// The moment that a text names, with its zone in brackets.
pub fn moment(text: &str) -> ZonedDateTime {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

/// What is wanted: these formulas of the demo book, served then, as seen from now.
pub fn wanted(book: &Book, names: &[&str], serve: &str, now: &str) -> Wanted {
    let formula = |name: &&str| Arc::new(book.formula(name).expect("a formula of the book").value);
    let kitchen = book.kitchen();
    Wanted {
        formulas: names.iter().map(formula).collect(),
        serve: moment(serve),
        now: moment(now),
        there: BTreeSet::new(),
        happened: Vec::new(),
        seen: Vec::new(),
        fixes: Vec::new(),
        place: Workplace::of(&kitchen),
        around: Surroundings::of(&kitchen),
    }
}

/// The day planned.
pub fn plan(names: &[&str], serve: &str, now: &str) -> Result<Timeline, Refusal> {
    let book = book();
    timeline(&wanted(&book, names, serve, now), &Propagation, &mut Patient)
}
