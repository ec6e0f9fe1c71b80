//! What a command is asked about: a book that is opened and proof-read, formulas and kitchens by their names.

pub mod day;
mod figures;
mod kitchen;
pub mod steps;
pub mod trial_plan;
mod wishes;

pub use figures::{count, length, percent, time};
pub use kitchen::{InKitchen, Place, kitchen, time_of_day};
pub use wishes::{Sought, Wished};

use crate::book::{self, Opened};
use crate::failure::{Failure, Stopped};
use crate::{findings, terminal};
use formula::ingredient::{did_you_mean, nearest};
use formula::{Formula, Severity};
use std::path::{Path, PathBuf};

/// One formula of a book.
#[derive(clap::Args)]
pub struct OneFormula {
    /// One formula's file, or a book's folder with --formula.
    book: PathBuf,
    /// The formula of this name.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
}

/// All formulas of a book, or one of them.
#[derive(clap::Args)]
pub struct Formulas {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    /// Only the formula of this name.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
}

impl OneFormula {
    /// The book, and the formula that is meant.
    pub fn open(&self) -> Result<(Opened, Formula), Stopped> {
        let opened = proof_read(&self.book)?;
        let mut formulas = chosen(opened.formulas(), self.formula.as_slice())?;
        if formulas.len() > 1 {
            return Err(Failure::new("which formula?").hint(which(&formulas)).into());
        }
        let formula = formulas.pop().ok_or_else(|| Failure::new("the book has no formulas"))?;
        Ok((opened, formula))
    }
}

impl Formulas {
    /// The book, and the formulas that are meant.
    pub fn open(&self) -> Result<(Opened, Vec<Formula>), Stopped> {
        let opened = proof_read(&self.book)?;
        let formulas = chosen(opened.formulas(), self.formula.as_slice())?;
        Ok((opened, formulas))
    }
}

/// Opens a book for a command that needs it whole: errors are drawn, and end the command.
pub fn proof_read(path: &Path) -> Result<Opened, Stopped> {
    let opened = book::open(path)?;
    let found = opened.check();
    if found.iter().any(|found| found.severity == Severity::Error) {
        terminal::show(&findings::text(&found, &opened.text))?;
        terminal::remark(&findings::summary(&found, opened.names().len()));
        return Err(Stopped::Faults);
    }
    Ok(opened)
}

/// The formulas of these names, in the order in which they are named; all where none is.
pub fn chosen(formulas: Vec<Formula>, names: &[String]) -> Result<Vec<Formula>, Failure> {
    if names.is_empty() {
        return Ok(formulas);
    }
    let find = |name: &String| formulas.iter().find(|formula| formula.name == *name).cloned();
    let known = || formulas.iter().map(|formula| formula.name.as_str());
    names.iter().map(|name| find(name).ok_or_else(|| unknown("formula", name, known()))).collect()
}

/// The book has none of that name: which was meant, and which there are.
pub fn unknown<'n>(kind: &str, name: &str, known: impl Iterator<Item = &'n str> + Clone) -> Failure {
    let meant = nearest(name, known.clone()).map(|near| did_you_mean(near) + " ");
    let hint = format!("{}it has: {}", meant.unwrap_or_default(), listed(known));
    Failure::new(format!("the book has no {kind} called “{name}”")).hint(hint)
}

/// How to say which formula is meant.
pub fn which(formulas: &[Formula]) -> String {
    format!("say --formula with one of: {}", listed(formulas.iter().map(|formula| formula.name.as_str())))
}

/// So many names are read; of more only the first are told.
const MOST_NAMES: usize = 40;

/// Names in a row.
pub fn listed<'n>(names: impl Iterator<Item = &'n str>) -> String {
    let mut names: Vec<&str> = names.collect();
    let more = names.len().saturating_sub(MOST_NAMES);
    names.truncate(MOST_NAMES);
    let told = names.join(", ");
    if more == 0 { told } else { format!("{told} and {more} more") }
}
