//! Logging a trial: figures are noted into its text in place, comments and order kept, and what a figure was before
//! stays beside it.

mod begin;
mod doubt;
mod entry;
mod figure;
mod told;

pub use begin::{Beginning, begin};
pub use doubt::doubt;
pub use entry::{Entry, Noted, Shown, note, receive};
pub use figure::{Figure, Part};
pub use told::{corrections, figures};

use std::fmt;

/// Why something cannot be noted, and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unnoted {
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub hint: String,
}

impl Unnoted {
    fn new(message: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { message: message.into(), hint: hint.into() }
    }
}

impl fmt::Display for Unnoted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}", self.message, self.hint)
    }
}

impl std::error::Error for Unnoted {}
