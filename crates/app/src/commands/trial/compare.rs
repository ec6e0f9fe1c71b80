//! `trial compare`: trials side by side.

use crate::asked::proof_read;
use crate::book::Opened;
use crate::commands::{Ended, Outcome};
use crate::failure::{Failure, Stopped};
use crate::learning::{as_baked, learning};
use crate::{files, photographs, terminal};
use bench::calibration::{Logged, beside};
use bench::compare::compare;
use bench::forecast::Surroundings;
use formula::Formula;
use formula::read::Trial;
use publish::logged::{Beside, Plate};
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

/// More columns than this nobody reads.
const MOST: usize = 8;
/// More changes of a formula than this are counted, not told.
const MOST_CHANGES: usize = 8;

impl Compare {
    pub fn run(self) -> Ended {
        let opened = self.book()?;
        let trials = self.chosen(&opened)?;
        if !(2..=MOST).contains(&trials.len()) {
            let failure = Failure::new(format!("a comparison takes two to {MOST} trials; these are {}", trials.len()));
            return Err(failure.hint("name their files, or a book with --formula").into());
        }
        let kitchen = opened.book.kitchen_of(trials[0]);
        let known = learning(&opened, &kitchen).lessons.calibration;
        let formulas: Vec<Formula> = trials.iter().filter_map(|trial| as_baked(&opened, trial)).collect();
        if formulas.len() < trials.len() {
            return Err(Failure::new("the book has not the formula of each of these trials").into());
        }
        let logged = trials.iter().zip(&formulas).map(|(trial, formula)| Logged {
            trial,
            formula,
            kitchen: opened.book.kitchen_of(trial),
        });
        let outcomes = beside(&logged.collect::<Vec<_>>(), &known);
        let text = |trial: &&Trial| opened.text.files.get(&*trial.file).map_or("", |source| &source.text);
        let beside = Beside {
            trials: trials.iter().map(|trial| (*trial, text(trial))).collect(),
            formulas: differences(&trials, &formulas, &Surroundings::of(&kitchen)),
            outcomes,
            known,
            plates: plates(&opened, &trials),
        };
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

/// What the formulas that were baked differ in, from each trial to the next.
fn differences(trials: &[&Trial], formulas: &[Formula], around: &Surroundings) -> Vec<String> {
    let told = |at: usize| {
        let (one, other) = (&formulas[at], &formulas[at + 1]);
        let names = [trials[at].name.clone(), trials[at + 1].name.clone()];
        let changes = publish::comparison::changes(&compare(&[one, other], around, &names), MOST_CHANGES);
        (!changes.is_empty()).then(|| format!("The formula, from {} to {}: {changes}.", names[0], names[1]))
    };
    (0..formulas.len() - 1).filter_map(told).collect()
}

fn plates(opened: &Opened, trials: &[&Trial]) -> Vec<Plate> {
    let of = |(at, trial): (usize, &&Trial)| {
        let folder = opened.folder.join(&*trial.file);
        let plate = move |one: &formula::read::PhotographSeen| {
            let path = folder.with_file_name(&one.file.value);
            let Ok(print) = photographs::of_trial(&path) else {
                terminal::remark(&format!("the photograph {} cannot be shown", path.display()));
                return None;
            };
            Some(Plate {
                trial: at,
                shows: one.shows.clone().unwrap_or_else(|| "photograph".to_owned()),
                across: one.across.map(quantity::Length::as_millimetres),
                source: print.within(),
                size: (print.width, print.height),
            })
        };
        trial.photographs.iter().filter_map(plate).collect::<Vec<_>>()
    };
    trials.iter().enumerate().flat_map(of).collect()
}
