//! What a book's own trials taught of a kitchen.

use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::{Memory, told, wait};
use bench::calibration::{Lessons, Logged, learn};
use formula::read::{Kitchen, Trial};
use formula::source::Source;
use formula::{Formula, Severity};
use std::collections::BTreeMap;
use store::hash;

/// The trials of a kitchen, and what they taught.
pub struct Learning<'b> {
    /// The trials, in the order of days.
    pub trials: Vec<&'b Trial>,
    /// What they taught.
    pub lessons: Lessons,
    /// The titles of trials of which the text that was baked is not remembered: the formula as it is now stands for it.
    pub not_as_baked: Vec<&'b str>,
}

/// Learns from the trials of a book that were baked in a kitchen, each from the text of the formula that was baked.
pub fn learning<'b>(opened: &'b Opened, kitchen: &Kitchen) -> Learning<'b> {
    let own = opened.book.trials.iter().filter(|trial| opened.book.kitchen_of(trial).name == kitchen.name);
    let trials: Vec<&Trial> = own.filter(|trial| opened.book.formulas.contains_key(&trial.formula.value)).collect();
    let mut formulas: BTreeMap<(&str, Option<&str>), Formula> = BTreeMap::new();
    let mut not_as_baked = Vec::new();
    for trial in &trials {
        let name = trial.formula.value.as_str();
        let revision = baked_otherwise(opened, trial);
        if !formulas.contains_key(&(name, revision)) {
            let baked = revision.and_then(|revision| remembered(opened, name, revision));
            let now = || opened.book.formula(name).map(|checked| checked.value);
            if revision.is_some() && baked.is_none() {
                not_as_baked.push(trial.title.as_str());
            }
            formulas.extend(baked.or_else(now).map(|formula| ((name, revision), formula)));
        }
    }
    let logged = |trial: &&'b Trial| {
        let formula = formulas.get(&(trial.formula.value.as_str(), baked_otherwise(opened, trial)))?;
        Some(Logged { trial, formula, kitchen: opened.book.kitchen_of(trial) })
    };
    let logged: Vec<Logged> = trials.iter().filter_map(logged).collect();
    let lessons = learn(&logged);
    Learning { trials, lessons, not_as_baked }
}

/// The formula that was baked in a trial; as it is now, where that is not remembered.
pub fn as_baked(opened: &Opened, trial: &Trial) -> Option<Formula> {
    let name = trial.formula.value.as_str();
    let baked = baked_otherwise(opened, trial).and_then(|revision| remembered(opened, name, revision));
    baked.or_else(|| opened.book.formula(name).map(|checked| checked.value))
}

/// The name of the text that was baked, where the formula says something else now.
fn baked_otherwise<'b>(opened: &Opened, trial: &'b Trial) -> Option<&'b str> {
    let revision = trial.revision.as_deref().filter(|revision| revision.len() == 64)?;
    let now = opened.book.formulas.get(&trial.formula.value)?;
    (hash(&now.text) != revision).then_some(revision)
}

/// The formula that a remembered text makes in the book as it is now.
fn remembered(opened: &Opened, name: &str, revision: &str) -> Option<Formula> {
    // On a thread of its own: who asks may be waiting for another store already.
    let asked = || wait(text_of(opened, revision)).ok()?.ok()?;
    let text = std::thread::scope(|scope| scope.spawn(asked).join().ok().flatten())?;
    let checked = opened.book.revised(&Source { file: format!("formulas/{name}.toml").into(), text });
    checked.diagnostics.iter().all(|found| found.severity < Severity::Error).then_some(checked.value)
}

async fn text_of(opened: &Opened, revision: &str) -> Result<Option<String>, Failure> {
    let store = Memory::default().open_there(&opened.folder).await?;
    let text = store.kept(revision).await.map_err(told)?;
    store.close().await;
    Ok(text)
}
