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

/// Brings the pages in a folder up to date with a book, with what is printed of each formula.
pub fn print(opened: &Opened, out: &Path, with: &[With]) -> Result<Printed, Failure> {
    let record = Record::read(out);
    let Proof { found, formulas } = proof::read(opened, &record);
    if found.iter().any(|one| one.severity == Severity::Error) {
        return Ok(Printed { found, files: None });
    }
    let mut folder = Folder::open(out, &record)?;
    let pages = Pages { opened, with, record: &record, formulas, now: moment::of_publishing(), around: OnceLock::new() };
    let next = pages.lay_out(&folder)?;
    let files = folder.put_in_place(next)?;
    Ok(Printed { found, files: Some(files) })
}
