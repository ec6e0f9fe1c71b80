//! What answers about a book rest on, so that a change elsewhere in it leaves them standing.

use crate::book::Opened;
use formula::read::{Trial, stem};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicU64, Ordering};
use store::hash;

/// Where a book's formulas lie.
const FORMULAS: &str = "formulas/";

/// What is known of one reading of a book.
#[derive(Debug)]
pub struct Rests {
    /// Which reading it is.
    pub number: u64,
    apart: OnceLock<String>,
    as_baked: OnceLock<BTreeSet<String>>,
}

impl Default for Rests {
    fn default() -> Self {
        static READINGS: AtomicU64 = AtomicU64::new(0);
        Self { number: READINGS.fetch_add(1, Ordering::Relaxed), apart: OnceLock::new(), as_baked: OnceLock::new() }
    }
}

impl Opened {
    /// A mark of a formula's text, of those that it is made with, and of everything in the book that is no formula.
    pub fn rests_on(&self, name: &str) -> String {
        let formulas = self.formula_texts();
        let mut all = self.apart_from_formulas().to_owned();
        for one in with_what(name, &formulas) {
            all.push_str(&format!("\n{one}\n{}", formulas.get(one).copied().unwrap_or_default()));
        }
        hash(&all)
    }

    /// Whether trials teach the same as before a change: what they were baked by is the same, and all they stand beside.
    pub fn is_taught_alike(&self, before: &Self) -> bool {
        let (now, then) = (self.formula_texts(), before.formula_texts());
        let is_alike = |trial: &Trial| {
            let name = trial.formula.value.as_str();
            let is_pinned = pinned(trial).is_some() && before.as_baked().contains(name);
            let beside = |texts: &BTreeMap<&str, &str>| {
                let others = with_what(name, texts).into_iter().filter(|one| *one != name);
                others.map(|one| (one.to_owned(), texts.get(one).map(|text| (*text).to_owned()))).collect::<Vec<_>>()
            };
            (is_pinned || now.get(name) == then.get(name)) && beside(&now) == beside(&then)
        };
        let is_alike = self.apart_from_formulas() == before.apart_from_formulas() && self.book.trials.iter().all(is_alike);
        if is_alike {
            // Whoever changes a formula keeps the text that its trials were baked by.
            let _ = self.rests.as_baked.set(before.as_baked().clone());
        }
        is_alike
    }

    /// The formulas of which every trial with a text of its own was baked by the text as it stands.
    fn as_baked(&self) -> &BTreeSet<String> {
        self.rests.as_baked.get_or_init(|| {
            let texts = self.formula_texts();
            let is_as_baked = |name: &str| {
                let now = texts.get(name).map(|text| hash(text));
                let own = self.book.trials.iter().filter(|trial| trial.formula.value == name).filter_map(pinned);
                now.is_some_and(|now| own.into_iter().all(|revision| revision == now))
            };
            let names = self.book.trials.iter().map(|trial| trial.formula.value.clone());
            names.filter(|name| is_as_baked(name)).collect()
        })
    }

    fn formula_texts(&self) -> BTreeMap<&str, &str> {
        let files = self.text.files.iter().filter(|(file, _)| file.starts_with(FORMULAS));
        files.map(|(file, source)| (stem(file), source.text.as_str())).collect()
    }

    /// A mark of everything that is no formula.
    fn apart_from_formulas(&self) -> &str {
        self.rests.apart.get_or_init(|| {
            let others = self.text.files.iter().filter(|(file, _)| !file.starts_with(FORMULAS));
            hash(&others.map(|(file, source)| format!("{file}\n{}\n", source.text)).collect::<String>())
        })
    }
}

/// The text that a trial was baked by, where it says which.
fn pinned(trial: &Trial) -> Option<&str> {
    trial.revision.as_deref().filter(|revision| revision.len() == 64)
}

/// A formula with every other one that its text, or theirs, may name.
fn with_what<'f>(name: &'f str, formulas: &BTreeMap<&'f str, &'f str>) -> BTreeSet<&'f str> {
    let (mut known, mut left) = (BTreeSet::from([name]), vec![name]);
    while let Some(one) = left.pop() {
        let Some(text) = formulas.get(one) else { continue };
        let named = formulas.keys().filter(|other| text.contains(**other));
        left.extend(named.filter(|other| known.insert(**other)).collect::<Vec<_>>());
    }
    known
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_formula_goes_with_those_that_it_is_made_with_and_theirs() {
        let knots = ("knots", "formula = \"syrup\"");
        let formulas = BTreeMap::from([knots, ("syrup", "formula = \"sugar\""), ("sugar", ""), ("rye", "")]);
        assert_eq!(with_what("knots", &formulas), BTreeSet::from(["knots", "syrup", "sugar"]));
        assert_eq!(with_what("rye", &formulas), BTreeSet::from(["rye"]));
        assert_eq!(with_what("nothing", &formulas), BTreeSet::from(["nothing"]));
    }
}
