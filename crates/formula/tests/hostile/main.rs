//! Texts that no author means well by: refused with a word and a place, never with a panic.
//!
//! No expected figure here comes from a source: what is checked is that the limits stated in
//! `docs/document.md` hold, and that whatever is refused is refused aloud. A test that runs without
//! end is a fault too; none is timed, so that a slow machine passes.

mod amounts;
mod chains;
mod letters;
mod nesting;
mod sizes;

use formula::arithmetic::{blend, figures, mixture, overall, scaled, weighed};
use formula::source::Source;
use formula::{Book, BookText, Diagnostic, Formula, Place, Severity};
use std::collections::{BTreeMap, BTreeSet};

/// What came of a book: everything that was said of it, and its formulas.
struct Outcome {
    said: Vec<Diagnostic>,
    formulas: BTreeMap<String, Formula>,
}

impl Outcome {
    /// The codes of all that was said.
    fn codes(&self) -> BTreeSet<&'static str> {
        self.said.iter().map(|found| found.code).collect()
    }

    /// Holds that a fault was named; warnings and advice are not enough to refuse something.
    #[track_caller]
    fn refused_as(&self, code: &str) -> &Self {
        let named = self.said.iter().any(|found| found.code == code && found.severity == Severity::Error);
        assert!(named, "not refused as {code}: {:?}", self.codes());
        self
    }

    /// Holds that all that was said takes no more room than a person's patience and a small machine have.
    #[track_caller]
    fn said_briefly(&self) -> &Self {
        let letters: usize = self.said.iter().map(|found| found.message.len() + found.hint.as_ref().map_or(0, String::len)).sum();
        assert!(letters < 64 << 20, "{letters} bytes were said in {} diagnostics", self.said.len());
        self
    }
}

/// Reads and works out a book of files given as bytes.
#[track_caller]
fn open(files: &[(&str, Vec<u8>)]) -> Outcome {
    let mut said = Vec::new();
    let mut texts = BTreeMap::new();
    for (file, bytes) in files {
        let read = Source::from_bytes(file, bytes.clone());
        assert!(read.value.is_some() || !read.diagnostics.is_empty(), "{file} was refused without a word");
        said.extend(read.diagnostics);
        texts.extend(read.value.map(|source| ((*file).to_owned(), source)));
    }
    let book = Book::open(BookText { files: texts.clone() });
    said.extend(book.diagnostics);
    let _ = book.value.kitchen();
    let mut formulas = BTreeMap::new();
    for name in book.value.formulas.keys() {
        let made = book.value.formula(name).expect("a formula that the book lists");
        said.extend(made.diagnostics);
        work_out(&made.value);
        formulas.insert(name.clone(), made.value);
    }
    for found in &said {
        check_place(&texts, found.code, &found.place);
        found.fix.iter().flat_map(|fix| &fix.edits).for_each(|edit| check_place(&texts, found.code, &edit.place));
    }
    Outcome { said, formulas }
}

/// Reads and works out a single formula.
#[track_caller]
fn open_formula(text: &str) -> Outcome {
    open(&[("formulas/x.toml", text.as_bytes().to_vec())])
}

/// A fault lies in its file, and begins and ends between letters. A file that was not read has only a beginning.
#[track_caller]
fn check_place(texts: &BTreeMap<String, Source>, code: &str, place: &Place) {
    let text = texts.get(&*place.file).map_or("", |source| source.text.as_str());
    assert!(text.get(place.span.clone()).is_some(), "{code} lies outside {}: {:?}", place.file, place.span);
}

/// All the arithmetic there is, for every component.
fn work_out(formula: &Formula) {
    let _ = blend(formula);
    let twice = scaled(formula, 2.0, None);
    for component in 0..formula.components.len() {
        let _ = weighed(formula, component);
        let _ = mixture(formula, component);
        let _ = figures(&overall(formula, component));
        let _ = figures(&overall(&twice, component));
    }
}

/// A formula of one stage with these ingredient lines.
fn with_lines(lines: &str) -> String {
    format!(
        "title = \"x\"\n[[component]]\nname = \"c\"\n[[component.stage]]\nname = \"s\"\nkind = \"mixed\"\n[component.stage.ingredients]\n{lines}"
    )
}
