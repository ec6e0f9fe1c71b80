//! What the book would say if one of its files said something else: nothing that cannot be read is written by a form.

use crate::book::Opened;
use formula::source::Source;
use formula::{Book, Diagnostic, Severity};

/// The first error that the book would have with a text of a file, and that it does not have.
pub fn fault(opened: &Opened, file: &str, text: &str) -> Option<Diagnostic> {
    let mut changed = opened.text.clone();
    let known = opened.text.files.get(file).map(|source| source.file.clone());
    changed.files.insert(file.to_owned(), Source { file: known.unwrap_or_else(|| file.into()), text: text.to_owned() });
    let before = Book::open(opened.text.clone()).diagnostics;
    let new = Book::open(changed).diagnostics;
    let is_new = |message: &str| !before.iter().any(|one| one.message == message);
    new.into_iter().find(|one| one.severity == Severity::Error && is_new(&one.message))
}
