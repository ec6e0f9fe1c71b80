//! `check`: proof-reads a book.

use super::{Ended, Format, Outcome};
use crate::book::Opened;
use crate::memory::{Memory, wait};
use crate::tasting::evidence::Evidence;
use crate::{book, findings, terminal};
use formula::Diagnostic;
use std::path::PathBuf;

/// Proof-reads a book or one formula and reports every fault with its place.
///
/// Each fault has a name; `wellproved explain NAME` says why it is one, with a bad and a good example.
#[derive(clap::Args)]
pub struct Check {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    /// The form of the report.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    #[command(flatten)]
    memory: Memory,
}

impl Check {
    pub fn run(self) -> Ended {
        let opened = book::open(&self.book)?;
        let found: Vec<Diagnostic> = opened.check().into_iter().chain(self.unfounded(&opened)).collect();
        let report = match self.format {
            Format::Text => findings::text(&found, &opened.text),
            Format::Json => format!("{:#}", findings::json(&found, &opened.text)),
        };
        terminal::show(&report)?;
        if self.format == Format::Text {
            terminal::remark(&findings::summary(&found, opened.names().len()));
        }
        Ok(if found.iter().any(Diagnostic::is_fault) { Outcome::FaultsFound } else { Outcome::Fine })
    }

    /// What formulas cite of which nothing can be claimed. A memory that is away is no fault of the book: what lies in its
    /// folder is looked at then.
    fn unfounded(&self, opened: &Opened) -> Vec<Diagnostic> {
        if opened.book.tastings.is_empty() {
            return Vec::new();
        }
        let evidence = match wait(Evidence::of(opened, &self.memory)) {
            Ok(Ok(evidence)) => evidence,
            _ => Evidence::unremembered(opened),
        };
        opened.formulas().iter().flat_map(|formula| evidence.unfounded(formula).collect::<Vec<_>>()).collect()
    }
}
