//! What pages may claim: only what the store holds of a tasting that is closed, or its raw data beside it in the book.

use super::Held;
use super::reporting::{Reported, beside, counting};
use crate::book::Opened;
use crate::failure::Failure;
use crate::learning::as_baked;
use crate::memory::{Memory, told};
use bench::tasting::{Since, since};
use formula::source::Source;
use formula::{Diagnostic, Formula, fault};
use publish::page::{Cited, evidence_name, evidence_page};
use publish::tasting::{Claim, changed, claim};
use std::collections::BTreeMap;
use store::{Kind, Sitting, Store};

/// The closed tastings that a book's formulas cite, and why the others may not be cited.
#[derive(Default)]
pub struct Evidence {
    closed: BTreeMap<String, Closed>,
    missing: BTreeMap<String, String>,
}

/// A closed tasting with what its samples were made by.
struct Closed {
    reported: Reported,
    made: Made,
}

/// What the samples of a tasting were made by, beside what the book says now.
#[derive(Debug, Default)]
struct Made {
    /// Of each formula, what was changed since its samples were made.
    changed: BTreeMap<String, (String, Vec<Since>)>,
    /// The samples that were made by their formula as it stands.
    standing: Vec<usize>,
}

impl Evidence {
    /// Looks up every tasting of a book. A book that was never remembered has none to show, which is no failure.
    pub async fn of(opened: &Opened, memory: &Memory) -> Result<Self, Failure> {
        if opened.book.tastings.is_empty() {
            return Ok(Self::default());
        }
        let Some(store) = memory.open_if_there(&opened.folder).await? else { return Ok(Self::unremembered(opened)) };
        let evidence = Self::held_by(&store, opened).await?;
        store.close().await;
        Ok(evidence)
    }

    /// What the book's folder alone can show.
    pub fn unremembered(opened: &Opened) -> Self {
        let mut evidence = Self::default();
        opened.book.tastings.keys().for_each(|name| evidence.look_beside(opened, name, "its answers are not kept here"));
        evidence
    }

    /// Looks up every tasting of a book in a memory that is open.
    pub async fn held_by(store: &Store, opened: &Opened) -> Result<Self, Failure> {
        let mut evidence = Self::default();
        for name in opened.book.tastings.keys() {
            match counting(store, name, opened).await? {
                Some((held, reported)) => {
                    let made = made(store, opened, &held).await?;
                    evidence.closed.insert(name.clone(), Closed { reported, made });
                }
                None => evidence.look_beside(opened, name, without(store.sitting(name).await.map_err(told)?)),
            }
        }
        Ok(evidence)
    }

    /// Looks for raw data beside a tasting; `otherwise` says why there is nothing to show without them.
    fn look_beside(&mut self, opened: &Opened, name: &str, otherwise: &str) {
        match beside(opened, name) {
            Some(Ok(reported)) if reported.findings.whole == 0 => {
                self.missing.insert(name.to_owned(), "nobody has answered everything in its raw data".to_owned());
            }
            Some(Ok(reported)) => {
                self.closed.insert(name.to_owned(), Closed { reported, made: Made::default() });
            }
            Some(Err(failure)) => {
                self.missing.insert(name.to_owned(), format!("its raw data cannot be read: {failure}"));
            }
            None => {
                self.missing.insert(name.to_owned(), otherwise.to_owned());
            }
        }
    }

    /// What a formula cites without ground, and what was changed since it was tasted.
    pub fn unfounded<'e>(&'e self, formula: &'e Formula) -> impl Iterator<Item = Diagnostic> + 'e {
        formula.head.evidence.iter().filter_map(move |name| {
            let place = || name.place(&formula.file);
            if let Some(why) = self.missing.get(&name.value) {
                let message = format!("the page makes no claim of “{}”: {why}", name.value);
                let found = fault::EVIDENCE_NOT_HELD.at(place(), message);
                return Some(found.hint("hold the tasting and close it, or publish where its answers are kept"));
            }
            let told = self.closed.get(&name.value)?.changed(&formula.name)?;
            let message = format!("what is claimed of “{}” was tasted otherwise. {told}", name.value);
            let found = fault::CHANGED_SINCE_TASTED.at(place(), message);
            Some(found.hint("taste it as it is now, or take the line out; the page says what was changed"))
        })
    }

    /// What a formula's page claims, in the order in which it cites.
    pub fn claims(&self, formula: &Formula) -> Vec<Claim> {
        let one = |name: &formula::read::At<String>| {
            let closed = self.closed.get(&name.value)?;
            let words = claim(&closed.reported.report(), &formula.name, &closed.made.standing)?;
            Some(Claim { words, page: evidence_name(&name.value), changed: closed.changed(&formula.name) })
        };
        formula.head.evidence.iter().filter_map(one).collect()
    }

    /// The evidence sheets of tastings that are cited, by file.
    pub fn sheets(&self, opened: &Opened) -> BTreeMap<String, String> {
        let settings = &opened.book.settings;
        let sheet = |(name, closed): (&String, &Closed)| {
            let by = closed.cited_by(opened, name);
            (!by.is_empty()).then(|| (evidence_name(name), evidence_page(&closed.reported.report(), &by, settings)))
        };
        self.closed.iter().filter_map(sheet).collect()
    }

    /// All that pages depend on here: another print means other claims.
    pub fn print(&self) -> String {
        let one = |(name, closed): (&String, &Closed)| format!("{name} {:?} {:?}\n", closed.reported.raw, closed.made);
        self.closed.iter().map(one).chain(self.missing.iter().map(|(name, why)| format!("{name} {why}\n"))).collect()
    }
}

impl Closed {
    fn changed(&self, formula: &str) -> Option<String> {
        self.made.changed.get(formula).and_then(|(tasted, since)| changed(tasted, since))
    }

    /// The formulas that cite the tasting: only those can whose samples were tasted.
    fn cited_by(&self, opened: &Opened, name: &str) -> Vec<Cited> {
        let samples = &self.reported.tasting.samples;
        let mut tasted: Vec<&str> = samples.iter().filter_map(|sample| Some(sample.formula.as_ref()?.value.as_str())).collect();
        tasted.sort_unstable();
        tasted.dedup();
        let cites = |formula: &str| {
            let formula = opened.book.formula(formula)?.value;
            let is_cited = formula.head.evidence.iter().any(|cited| cited.value == name);
            let changed = self.changed(&formula.name);
            is_cited.then(|| Cited { name: formula.name.clone(), title: formula.head.title.clone(), changed })
        };
        tasted.into_iter().filter_map(cites).collect()
    }
}

/// Why a tasting without a full answer in the memory has nothing to show.
fn without(sitting: Option<Sitting>) -> &'static str {
    match sitting {
        None => "it was never laid",
        Some(sitting) if sitting.closed.is_none() => "it is still open",
        Some(_) => "nobody has answered everything",
    }
}

/// What each sample was made by. Of several samples of a formula the one that is nearest to it as it stands says what was
/// changed since.
async fn made(store: &Store, opened: &Opened, held: &Held) -> Result<Made, Failure> {
    let mut found = Made::default();
    for (sample, (kind, name, number)) in held.sitting.samples.iter().enumerate() {
        let tasted = match kind {
            Kind::Formula => {
                let text = store.text(*kind, name, *number).await.map_err(told)?;
                Some(opened.book.revised(&Source { file: format!("formulas/{name}.toml").into(), text }).value)
            }
            // A trial was baked by the text that it names.
            _ => opened.book.trials.iter().find(|trial| trial.name == *name).and_then(|trial| as_baked(opened, trial)),
        };
        let now = tasted.as_ref().and_then(|one| opened.book.formula(&one.name));
        let (Some(tasted), Some(now)) = (tasted, now) else { continue };
        let what = if *kind == Kind::Trial { format!("what the trial {name} baked") } else { format!("revision {number}") };
        let changed = since(&tasted, &now.value);
        if changed.is_empty() {
            found.standing.push(sample);
        }
        let one = (what, changed);
        let is_nearer = |other: &(String, Vec<Since>)| (one.1.len(), &one.0) < (other.1.len(), &other.0);
        if found.changed.get(&tasted.name).is_none_or(is_nearer) {
            found.changed.insert(tasted.name.clone(), one);
        }
    }
    Ok(found)
}
