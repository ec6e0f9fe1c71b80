//! Rows of a table into the files of a book: what would change, or why none of it can be taken.
//!
//! A row is read by the very reader of the file that it goes into, so that a wrong cell gets the fault, the message and the
//! advice of a wrong line, marked at the cell. Nothing is taken by halves: one wrong cell refuses all.

mod ingredients;
mod logger;
mod prices;
mod table;

pub use ingredients::import_ingredients;
pub use logger::{Asked, Clock, Log, Logged, Scale, as_course, clock, mean, read_logger, with_room_log};
pub use prices::import_prices;

use crate::Diagnostic;
use std::collections::BTreeMap;

/// What an import would do.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Imported {
    /// The new texts of the files that change, by their names in the book.
    pub files: BTreeMap<String, String>,
    /// What each row does.
    pub changes: Vec<Change>,
}

/// What a row does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The file.
    pub file: String,
    /// What it is about, as readers see it.
    pub title: String,
    /// What it does.
    pub does: Does,
}

/// What a row does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Does {
    /// It adds this.
    Adds(String),
    /// It puts each new text in the place of an old one, which may be missing: key, before, then.
    Changes(Vec<(String, Option<String>, String)>),
    /// All of it stands there already.
    Nothing,
}

/// Whether something forbids the import.
fn is_refused(found: &[Diagnostic]) -> bool {
    found.iter().any(|one| one.severity == crate::Severity::Error)
}
