//! What is to be printed, as PDF beside the pages: recipe cards, formula sheets and drafts of labels.

use super::folder::Folder;
use crate::failure::Failure;
use crate::labelled::{self, Wanted};
use crate::paper::{Paper, Printed, set};
use bench::label::{Law, Sold, label};
use formula::{Book, Formula};
use publish::page::{ON_PAPER, OnPaper};
use publish::print::Meant;

/// Where they lie.
pub const FOLDER: &str = "paper";

/// What is printed of each formula.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, clap::ValueEnum)]
pub enum With {
    /// A recipe card.
    Card,
    /// A formula sheet for professionals.
    Sheet,
    /// A sheet of draft labels, where the formula can be labelled.
    Labels,
}

impl With {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Card, Self::Sheet, Self::Labels];

    /// Its name in files and for pages.
    pub const fn name(self) -> &'static str {
        let [card, sheet, labels] = ON_PAPER;
        match self {
            Self::Card => card,
            Self::Sheet => sheet,
            Self::Labels => labels,
        }
    }
}

/// Prints what was asked for of a formula, and names the files.
pub fn ready(book: &Book, formula: &Formula, with: &[With], folder: &Folder) -> Result<Vec<OnPaper>, Failure> {
    let mut printed = Vec::new();
    for one in with {
        if let Some(bytes) = print(book, formula, *one)? {
            let name = one.name();
            let file = format!("{FOLDER}/{}-{name}.pdf", formula.name);
            folder.stage(&file, &bytes)?;
            printed.push(OnPaper { file, name });
        }
    }
    Ok(printed)
}

fn print(book: &Book, formula: &Formula, what: With) -> Result<Option<Vec<u8>>, Failure> {
    let settings = &book.settings;
    let settings = &*settings.told_for(&formula.head);
    let law = Law::by_language(&settings.language);
    let whole = if law == Law::Us { Paper::Letter } else { Paper::A4 };
    match what {
        With::Card => set(Printed::Card, Paper::A5, &publish::print::card(formula, settings)).map(Some),
        With::Sheet => {
            let sheet = publish::sheet::sheet(formula, &book.kitchen(), settings);
            let words = publish::print::sheet(&sheet, formula, settings);
            set(Printed::Sheet, whole, &words).map(Some)
        }
        With::Labels => {
            let Some(one) = label(formula, settings, law, &Sold::default()) else { return Ok(None) };
            let labels = [one];
            let words = publish::print::labels(&labels, settings, Meant { as_drafts: true, for_small_packs: false });
            let wanted = Wanted { labels: 1, copies: None, from: 1 };
            // What fits on no sheet of labels has no sheet of them; the command says why.
            Ok(labelled::set(labelled::smallest(&labels), wanted, &words).ok().map(|set| set.bytes))
        }
    }
}
