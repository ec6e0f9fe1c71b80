//! The trials of a book: its folder of what was seen, with the readings that lie beside them.

use crate::ingredient::{did_you_mean, nearest};
use crate::read::{At, Kitchen, Trial, read_trial};
use crate::source::{MOST_NAMES, Source};
use crate::{Checked, Diagnostic, fault};
use std::collections::BTreeMap;

/// The folder of trials.
pub const TRIALS: &str = "trials/";

/// The trials among the files of their folder, in the order of days; what they call must be in the book.
pub fn read_trials(
    files: &BTreeMap<String, Source>,
    formulas: &BTreeMap<String, Source>,
    kitchens: &BTreeMap<String, Kitchen>,
) -> Checked<Vec<Trial>> {
    let mut found = Vec::new();
    let mut trials = Vec::new();
    for (file, source) in files.iter().filter(|(file, _)| !file.ends_with(".csv")) {
        let folder = file.rsplit_once('/').map_or("", |(folder, _)| folder);
        let read = read_trial(source, &|course| files.get(&format!("{folder}/{course}")));
        found.extend(read.diagnostics);
        found.extend(misnamed(&read.value, formulas, kitchens));
        trials.push(read.value);
    }
    trials.sort_by(|a, b| (a.date, &a.file).cmp(&(b.date, &b.file)));
    Checked { value: trials, diagnostics: found }
}

/// Names in a trial that no file of the book has.
fn misnamed(
    trial: &Trial,
    formulas: &BTreeMap<String, Source>,
    kitchens: &BTreeMap<String, Kitchen>,
) -> impl Iterator<Item = Diagnostic> {
    let unknown = |fault: &fault::Fault, what: &str, name: &At<String>, known: Vec<&str>| {
        let found = fault.at(name.place(&trial.file), format!("there is no {what} called “{}”", name.value));
        match nearest(&name.value, known.iter().copied()) {
            Some(near) => found.hint(did_you_mean(near)),
            None => {
                found.hint(format!("the book has: {}", known.iter().take(MOST_NAMES).copied().collect::<Vec<_>>().join(", ")))
            }
        }
    };
    let formula = &trial.formula;
    let formula = (!formula.value.is_empty() && !formulas.contains_key(&formula.value))
        .then(|| unknown(&fault::UNKNOWN_FORMULA, "formula", formula, formulas.keys().map(String::as_str).collect()));
    let kitchen = trial
        .kitchen
        .as_ref()
        .filter(|name| !kitchens.contains_key(&name.value))
        .map(|name| unknown(&fault::UNKNOWN_KITCHEN, "kitchen", name, kitchens.keys().map(String::as_str).collect()));
    formula.into_iter().chain(kitchen)
}
