//! What a book's own trials taught of a kitchen.

use crate::book::Opened;
use bench::calibration::{Lessons, Logged, learn};
use formula::Formula;
use formula::read::{Kitchen, Trial};
use std::collections::BTreeMap;

/// The trials of a kitchen, and what they taught.
pub struct Learning<'b> {
    /// The trials, in the order of days.
    pub trials: Vec<&'b Trial>,
    /// What they taught.
    pub lessons: Lessons,
}

/// Learns from the trials of a book that were baked in a kitchen.
pub fn learning<'b>(opened: &'b Opened, kitchen: &Kitchen) -> Learning<'b> {
    let own = opened.book.trials.iter().filter(|trial| opened.book.kitchen_of(trial).name == kitchen.name);
    let trials: Vec<&Trial> = own.filter(|trial| opened.book.formulas.contains_key(&trial.formula.value)).collect();
    let mut formulas: BTreeMap<&str, Formula> = BTreeMap::new();
    for trial in &trials {
        let name = trial.formula.value.as_str();
        if !formulas.contains_key(name)
            && let Some(checked) = opened.book.formula(name)
        {
            formulas.insert(name, checked.value);
        }
    }
    let logged = |trial: &&'b Trial| {
        let formula = formulas.get(trial.formula.value.as_str())?;
        Some(Logged { trial, formula, kitchen: opened.book.kitchen_of(trial) })
    };
    let logged: Vec<Logged> = trials.iter().filter_map(logged).collect();
    let lessons = learn(&logged);
    Learning { trials, lessons }
}
