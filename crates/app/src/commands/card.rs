//! `card`: a recipe card for the kitchen wall or the card box.

use super::{Ended, Outcome};
use crate::asked::OneFormula;
use crate::paper::{Paper, Printed, set};
use crate::{files, terminal};
use std::path::PathBuf;

/// Prints a recipe card: what is needed, what is done, what to mind, as a PDF that can be searched.
///
///   wellproved card potato-muffins.toml potato-muffins.pdf
///   wellproved card saltmarsh card.pdf --formula cardamom-knots --paper index
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Card {
    #[command(flatten)]
    one: OneFormula,
    /// The file that is written; one that is there is replaced.
    file: PathBuf,
    /// The paper.
    #[arg(long, value_enum, value_name = "SIZE", default_value_t = Paper::A5)]
    paper: Paper,
}

impl Card {
    pub fn run(self) -> Ended {
        let (opened, formula) = self.one.open()?;
        let words = publish::print::card(&formula, &opened.book.settings);
        files::write(&self.file, &set(Printed::Card, self.paper, &words)?)?;
        terminal::remark(&format!("printed: {}", self.file.display()));
        Ok(Outcome::Fine)
    }
}
