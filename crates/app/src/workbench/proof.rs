//! What the book would say if one of its files said something else: nothing that cannot be read is written by a form.

use super::answer::Refusal;
use crate::book::Opened;
use formula::source::Source;
use formula::{Book, Severity};

/// Refuses a text of a file with which the book would have an error that it does not have.
pub fn refuse_faulty(opened: &Opened, file: &str, text: &str) -> Result<(), Refusal> {
    let mut changed = opened.text.clone();
    let known = opened.text.files.get(file).map(|source| source.file.clone());
    changed.files.insert(file.to_owned(), Source { file: known.unwrap_or_else(|| file.into()), text: text.to_owned() });
    let before = Book::open(opened.text.clone()).diagnostics;
    let new = Book::open(changed).diagnostics;
    let is_new = |message: &str| !before.iter().any(|one| one.message == message);
    match new.iter().find(|one| one.severity == Severity::Error && is_new(&one.message)) {
        None => Ok(()),
        Some(one) => {
            let hint = one.hint.clone().unwrap_or_default();
            Err(Refusal::unfit(format!("{}: nothing was written.", quantity::print::capital(&one.message)), hint))
        }
    }
}
