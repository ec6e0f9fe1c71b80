//! What pages may claim: only what the store holds of a tasting that is closed, or its raw data beside it in the book.

use super::reporting::{Reported, beside, raw};
use super::{Held, held};
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
use store::{Kind, Store};

/// The closed tastings that a book's formulas cite, and why the others may not be cited.
#[derive(Default)]
pub struct Evidence {
    closed: BTreeMap<String, Closed>,
    missing: BTreeMap<String, String>,
}

/// A closed tasting, and of each formula what was changed since its samples were made.
struct Closed {
    reported: Reported,
    changed: BTreeMap<String, (String, Vec<Since>)>,
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
            let Ok(held) = held(store, name).await else {
                evidence.look_beside(opened, name, "it was never laid");
                continue;
            };
            if held.sitting.closed.is_none() {
                evidence.missing.insert(name.clone(), "it is still open".to_owned());
                continue;
            }
            let raw = raw(store, &held).await?;
            let changed = changes(store, opened, &held).await?;
            evidence.closed.insert(name.clone(), Closed { reported: Reported::of(held.tasting, raw, opened), changed });
        }
        Ok(evidence)
    }

    /// Looks for raw data beside a tasting; `otherwise` says why there is nothing to show without them.
    fn look_beside(&mut self, opened: &Opened, name: &str, otherwise: &str) {
        match beside(opened, name) {
            Some(Ok(reported)) => {
                self.closed.insert(name.to_owned(), Closed { reported, changed: BTreeMap::new() });
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
                return Some(
                    found.hint("hold and close it with `wellproved taste`, or publish where its answers are kept (--store)"),
                );
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
            let words = claim(&closed.reported.report(), &formula.name)?;
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
        let one = |(name, closed): (&String, &Closed)| format!("{name} {:?} {:?}\n", closed.reported.raw, closed.changed);
        self.closed.iter().map(one).chain(self.missing.iter().map(|(name, why)| format!("{name} {why}\n"))).collect()
    }
}

impl Closed {
    fn changed(&self, formula: &str) -> Option<String> {
        self.changed.get(formula).and_then(|(tasted, since)| changed(tasted, since))
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

/// Of each formula that was tasted, the revision of its first sample and what is otherwise in it now.
async fn changes(store: &Store, opened: &Opened, held: &Held) -> Result<BTreeMap<String, (String, Vec<Since>)>, Failure> {
    let mut found = BTreeMap::new();
    for (kind, name, number) in &held.sitting.samples {
        let tasted = match kind {
            Kind::Formula => {
                let text = store.text(*kind, name, *number).await.map_err(told)?;
                Some(opened.book.revised(&Source { file: format!("formulas/{name}.toml").into(), text }).value)
            }
            // A trial was baked by the text that it names.
            _ => opened.book.trials.iter().find(|trial| trial.name == *name).and_then(|trial| as_baked(opened, trial)),
        };
        let now = tasted.as_ref().and_then(|one| opened.book.formula(&one.name));
        if let (Some(tasted), Some(now)) = (tasted, now) {
            let what = if *kind == Kind::Trial { format!("what the trial {name} baked") } else { format!("revision {number}") };
            found.entry(tasted.name.clone()).or_insert_with(|| (what, since(&tasted, &now.value)));
        }
    }
    Ok(found)
}
