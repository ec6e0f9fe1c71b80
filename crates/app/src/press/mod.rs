//! A book goes to press: what changed is worked out and laid out anew, the rest is left as it lies.
//!
//! What a page depends on is boiled down to a print of its inputs; a record beside the pages keeps it, with what
//! the lists tell of each formula. Nothing is moved to its place before all of it is written, and a page is always
//! there before anything leads to it.

mod folder;
mod inputs;
mod pages;
mod papers;
mod pictures;
mod proof;
mod record;

use crate::book::Opened;
use crate::failure::Failure;
use crate::moment;
use crate::tasting::evidence::Evidence;
pub use inputs::stamp;
pub use papers::With;

use folder::Folder;
use formula::{Diagnostic, Severity};
use pages::Pages;
use proof::Proof;
use record::Record;
use std::path::Path;
use std::sync::OnceLock;

/// What became of an edition.
pub struct Printed {
    /// What proof-reading found.
    pub found: Vec<Diagnostic>,
    /// The files that were written and removed and those that were right already; none if errors stopped the press.
    pub files: Option<Files>,
}

/// So many files of an edition.
pub struct Files {
    /// Made anew.
    pub written: usize,
    /// Right already.
    pub unchanged: usize,
    /// Of formulas that are gone.
    pub removed: usize,
    /// Files of formulas that are gone, left because somebody changed them since.
    pub left: Vec<String>,
}

impl Files {
    /// "3 files written, 998 unchanged, 1 removed".
    pub fn told(&self) -> String {
        let mut told = vec![format!("{} {} written", self.written, if self.written == 1 { "file" } else { "files" })];
        told.extend((self.unchanged > 0).then(|| format!("{} unchanged", self.unchanged)));
        told.extend((self.removed > 0).then(|| format!("{} removed", self.removed)));
        told.join(", ")
    }
}

/// Refuses to write pages over the book's own folders.
pub fn keep_out_of_the_book(book: &Path, out: &Path) -> Result<(), Failure> {
    let own = ["formulas", "ingredients", "kitchens"].iter().map(|part| book.join(part));
    let same = |a: &Path, b: &Path| std::fs::canonicalize(a).ok().is_some_and(|a| std::fs::canonicalize(b).ok() == Some(a));
    if same(out, book) || own.into_iter().any(|part| same(out, &part)) {
        return Err(Failure::new(format!("{} is the book itself", out.display())).hint("name another folder with --out"));
    }
    Ok(())
}

/// Brings the pages in a folder up to date with a book and with what was tasted, with what is printed of each formula.
pub fn print(opened: &Opened, evidence: &Evidence, out: &Path, with: &[With]) -> Result<Printed, Failure> {
    let record = Record::read(out);
    let Proof { found, formulas } = proof::read(opened, evidence, &record);
    if found.iter().any(|one| one.severity == Severity::Error) {
        return Ok(Printed { found, files: None });
    }
    let mut folder = Folder::open(out, &record)?;
    let now = moment::of_publishing();
    let pages = Pages { opened, with, evidence, record: &record, formulas, now, around: OnceLock::new() };
    let next = pages.lay_out(&folder)?;
    let files = folder.put_in_place(next)?;
    Ok(Printed { found, files: Some(files) })
}
