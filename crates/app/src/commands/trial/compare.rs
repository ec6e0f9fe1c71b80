//! `trial compare`: trials side by side.

use crate::abreast::beside;
use crate::asked::proof_read;
use crate::book::Opened;
use crate::commands::{Ended, Outcome};
use crate::failure::{Failure, Stopped};
use crate::{files, terminal};
use formula::read::Trial;
use std::path::PathBuf;

/// Sets trials side by side: what went in, what came out with its bands, and the photographs at the same scale.
///
///   wellproved trial compare saltmarsh --formula potato-muffins
///   wellproved trial compare saltmarsh/trials/2026-11-03-muffins.toml saltmarsh/trials/2026-11-14-muffins.toml
///   wellproved trial compare saltmarsh --formula potato-muffins --out muffins.html
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Compare {
    /// A book's folder with --formula, or the files of two trials or more.
    #[arg(required = true)]
    trials: Vec<PathBuf>,
    /// All trials of the formula of this name.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
    /// Write the comparison with its photographs into this file, for a browser or the printer.
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

impl Compare {
    pub fn run(self) -> Ended {
        let opened = self.book()?;
        let trials = self.chosen(&opened)?;
        let beside = beside(&opened, &trials)?;
        terminal::say(&beside.text(terminal::width()))?;
        if let Some(out) = &self.out {
            files::write(out, beside.page().as_bytes())?;
            terminal::remark(&format!("written: {}", out.display()));
        }
        Ok(Outcome::Fine)
    }

    fn book(&self) -> Result<Opened, Stopped> {
        let first = &self.trials[0];
        let folder = if first.is_dir() { Some(first.clone()) } else { files::book_around(first) };
        let folder = folder.ok_or_else(|| Failure::new(format!("{} lies in no book", first.display())))?;
        proof_read(&folder)
    }

    /// The trials that are meant, in the order of days.
    fn chosen<'o>(&self, opened: &'o Opened) -> Result<Vec<&'o Trial>, Failure> {
        if let Some(name) = &self.formula {
            let own: Vec<&Trial> = opened.book.trials.iter().filter(|trial| trial.formula.value == *name).collect();
            let known = opened.book.trials.iter().map(|trial| trial.formula.value.as_str());
            return if own.is_empty() { Err(crate::asked::unknown("trial of a formula", name, known)) } else { Ok(own) };
        }
        let name = |path: &PathBuf| formula::read::stem(&path.to_string_lossy()).to_owned();
        let known = || opened.book.trials.iter().map(|trial| trial.name.as_str());
        let find = |path: &PathBuf| {
            let found = opened.book.trials.iter().find(|trial| trial.name == name(path));
            found.ok_or_else(|| crate::asked::unknown("trial", &name(path), known()))
        };
        let mut all = self.trials.iter().map(find).collect::<Result<Vec<_>, _>>()?;
        all.sort_by(|a, b| (a.date, &a.file).cmp(&(b.date, &b.file)));
        Ok(all)
    }
}
