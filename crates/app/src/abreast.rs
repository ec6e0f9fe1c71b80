//! Trials of a book set side by side, for a command as for a page.

use crate::book::Opened;
use crate::failure::Failure;
use crate::learning::as_baked;
use crate::{photographs, terminal};
use bench::calibration::{Logged, beside as seen_beside};
use bench::compare::compare;
use bench::forecast::Surroundings;
use formula::Formula;
use formula::read::Trial;
use publish::logged::{Beside, Plate};

/// More columns than this nobody reads.
pub const MOST: usize = 8;
/// More changes of a formula than this are counted, not told.
const MOST_CHANGES: usize = 8;

/// Two trials or more side by side, in the order in which they are given.
pub fn beside<'o>(opened: &'o Opened, trials: &[&'o Trial]) -> Result<Beside<'o>, Failure> {
    if !(2..=MOST).contains(&trials.len()) {
        let failure = Failure::new(format!("a comparison takes two to {MOST} trials; these are {}", trials.len()));
        return Err(failure.hint("name their files, or a book with --formula"));
    }
    let kitchen = opened.book.kitchen_of(trials[0]);
    let known = opened.taught(&kitchen);
    let baked: Vec<Formula> = trials.iter().filter_map(|trial| as_baked(opened, trial)).collect();
    if baked.len() < trials.len() {
        return Err(Failure::new("the book has not the formula of each of these trials"));
    }
    let logged =
        trials.iter().zip(&baked).map(|(trial, formula)| Logged { trial, formula, kitchen: opened.book.kitchen_of(trial) });
    let outcomes = seen_beside(&logged.collect::<Vec<_>>(), &known);
    let text = |trial: &&'o Trial| opened.text.files.get(&*trial.file).map_or("", |source| &source.text);
    Ok(Beside {
        trials: trials.iter().map(|trial| (*trial, text(trial))).collect(),
        formulas: differences(trials, &baked, &Surroundings::of(&kitchen)),
        outcomes,
        known,
        plates: plates(opened, trials),
        baked,
    })
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
