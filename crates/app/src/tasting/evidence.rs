//! What pages may claim: only what the store holds of a tasting that is closed.

use super::held;
use super::reporting::{Reported, raw};
use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::Memory;
use formula::read::Tasting;
use formula::{Diagnostic, Formula, fault};
use publish::page::{evidence_name, evidence_page};
use publish::tasting::{Claim, claim};
use std::collections::BTreeMap;
use store::Store;

/// The closed tastings that a book's formulas cite, and why the others may not be cited.
#[derive(Default)]
pub struct Evidence {
    closed: BTreeMap<String, Reported>,
    missing: BTreeMap<String, String>,
}

impl Evidence {
    /// Looks up every tasting of a book. A book that was never remembered has none to show, which is no failure.
    pub async fn of(opened: &Opened, memory: &Memory) -> Result<Self, Failure> {
        let mut evidence = Self::default();
        if opened.book.tastings.is_empty() {
            return Ok(evidence);
        }
        let Some(store) = memory.open_if_there(&opened.folder).await? else {
            let why = |name: &String| (name.clone(), "its answers are not kept here".to_owned());
            evidence.missing = opened.book.tastings.keys().map(why).collect();
            return Ok(evidence);
        };
        let evidence = Self::held_by(&store, opened).await?;
        store.close().await;
        Ok(evidence)
    }

    /// Looks up every tasting of a book in a memory that is open.
    pub async fn held_by(store: &Store, opened: &Opened) -> Result<Self, Failure> {
        let mut evidence = Self::default();
        for name in opened.book.tastings.keys() {
            let Ok(held) = held(store, name).await else {
                evidence.missing.insert(name.clone(), "it was never laid".to_owned());
                continue;
            };
            if held.sitting.closed.is_none() {
                evidence.missing.insert(name.clone(), "it is still open".to_owned());
                continue;
            }
            let raw = raw(store, &held).await?;
            evidence.closed.insert(name.clone(), Reported::of(held.tasting, raw, opened));
        }
        Ok(evidence)
    }

    /// What a formula cites without ground.
    pub fn unfounded<'e>(&'e self, formula: &'e Formula) -> impl Iterator<Item = Diagnostic> + 'e {
        formula.head.evidence.iter().filter_map(move |name| {
            let why = self.missing.get(&name.value)?;
            let message = format!("the page makes no claim of “{}”: {why}", name.value);
            let found = fault::EVIDENCE_NOT_HELD.at(name.place(&formula.file), message);
            Some(found.hint("hold and close it with `wellproved taste`, or publish where its answers are kept (--store)"))
        })
    }

    /// What a formula's page claims, in the order in which it cites.
    pub fn claims(&self, formula: &Formula) -> Vec<Claim> {
        let one = |name: &formula::read::At<String>| {
            let reported = self.closed.get(&name.value)?;
            Some(Claim { words: claim(&reported.report(), &formula.name)?, page: evidence_name(&name.value) })
        };
        formula.head.evidence.iter().filter_map(one).collect()
    }

    /// The evidence sheets of tastings that are cited, by file.
    pub fn sheets(&self, opened: &Opened) -> BTreeMap<String, String> {
        let settings = &opened.book.settings;
        let sheet = |(name, reported): (&String, &Reported)| {
            let by = cited_by(opened, name, &reported.tasting);
            (!by.is_empty()).then(|| (evidence_name(name), evidence_page(&reported.report(), &by, settings)))
        };
        self.closed.iter().filter_map(sheet).collect()
    }

    /// All that pages depend on here: another print means other claims.
    pub fn print(&self) -> String {
        let one = |(name, reported): (&String, &Reported)| format!("{name} {:?}\n", reported.raw);
        self.closed.iter().map(one).chain(self.missing.iter().map(|(name, why)| format!("{name} {why}\n"))).collect()
    }
}

/// The formulas that cite a tasting, by name and title: only those can whose samples were tasted.
fn cited_by(opened: &Opened, name: &str, tasting: &Tasting) -> Vec<(String, String)> {
    let mut tasted: Vec<&str> =
        tasting.samples.iter().filter_map(|sample| Some(sample.formula.as_ref()?.value.as_str())).collect();
    tasted.sort_unstable();
    tasted.dedup();
    let cites = |formula: &str| {
        let formula = opened.book.formula(formula)?.value;
        let is_cited = formula.head.evidence.iter().any(|cited| cited.value == name);
        is_cited.then(|| (formula.name.clone(), formula.head.title.clone()))
    };
    tasted.into_iter().filter_map(cites).collect()
}
