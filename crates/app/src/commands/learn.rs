//! `learn`: what the trials of a book taught.

use super::{Ended, Format, Outcome};
use crate::asked::{kitchen, proof_read};
use crate::failure::Failure;
use crate::learning::learning;
use crate::{files, terminal};
use publish::lessons::{self, Report};
use std::path::PathBuf;

/// Tells what logged trials taught of a kitchen, and how much closer the forecast has come.
///
/// What is learnt: the vigour of each leaven, how a dough follows the room, the friction of the mixer, the contact of
/// the griddle; each with its band, and with a question where a trial is out of line.
///
///   wellproved learn examples/saltmarsh
///   wellproved learn examples/saltmarsh --kitchen boathouse
///   wellproved learn examples/saltmarsh --drift liveliness.svg
///
/// After each trial it tells what was foreseen then, what was seen, and what the trial changed; a figure that is far off is
/// asked about with what may have been meant.
///
/// A trial is a file in trials/. `forecast` and `solve` use what they taught.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Learn {
    /// The book's folder.
    book: PathBuf,
    /// The kitchen of this name instead of the book's own.
    #[arg(long, value_name = "NAME")]
    kitchen: Option<String>,
    /// Write a drawing of how lively each leaven was over the weeks into this file, SVG.
    #[arg(long, value_name = "FILE")]
    drift: Option<PathBuf>,
    /// The form of the report.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Learn {
    pub fn run(self) -> Ended {
        let opened = proof_read(&self.book)?;
        let kitchen = kitchen(&opened.book, self.kitchen.as_deref())?;
        let learning = learning(&opened, &kitchen);
        let title = |name: &str| opened.book.pantry.find(name).map_or(name.to_owned(), |one| one.called.clone());
        let leavens = learning.lessons.calibration.leavens.keys().map(|name| (name.clone(), title(name))).collect();
        let report = Report { lessons: &learning.lessons, trials: &learning.trials, kitchen: &kitchen.title, leavens };
        terminal::say(&match self.format {
            Format::Text => lessons::text(&report, terminal::width()),
            Format::Json => format!("{:#}", lessons::json(&report)),
        })?;
        for title in &learning.not_as_baked {
            terminal::remark(&format!(
                "“{title}” is held against the formula as it is now: the text that was baked is not remembered"
            ));
        }
        if let Some(file) = &self.drift {
            let drawing = lessons::drawing(&report);
            let drawing =
                drawing.ok_or_else(|| Failure::new("no trial with a day tells of a leaven yet").hint("nothing was drawn"))?;
            files::write(file, drawing.as_bytes())?;
            terminal::remark(&format!("written: {}", file.display()));
        }
        Ok(Outcome::Fine)
    }
}
