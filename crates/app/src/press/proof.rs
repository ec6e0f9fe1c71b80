//! Proof-reading before the press: only what changed, and what had anything to be said of it.

use super::inputs::{Hash, Inputs};
use super::record::{Kept, Record};
use crate::book::Opened;
use crate::tasting::evidence::Evidence;
use formula::Diagnostic;
use publish::site::Card;
use std::collections::{BTreeMap, BTreeSet};

/// What proof-reading gave.
pub struct Proof {
    /// Everything that was found, in the order of files and places.
    pub found: Vec<Diagnostic>,
    /// Every formula of the edition by name.
    pub formulas: BTreeMap<String, Proofed>,
}

/// A formula that was proof-read, now or before.
pub struct Proofed {
    /// What the lists tell of it.
    pub card: Card,
    /// The file of its photograph, within the book.
    pub photograph: Option<String>,
    /// The prints of its text, of all texts it is made by way of, and of all that it depends on.
    pub prints: Prints,
    /// Whether nothing at all was found.
    pub is_spotless: bool,
    /// Whether its page is to be brought up to date now.
    pub is_due: bool,
}

/// A formula's prints.
#[derive(Clone, Copy)]
pub struct Prints {
    /// Of its own text.
    pub text: Hash,
    /// Of that and the texts it is made by way of.
    pub words: Hash,
    /// Of all that it depends on, the rest of the book apart.
    pub all: Hash,
}

impl Prints {
    /// Those of a formula that cannot be worked out whole: they equal no other.
    const NONE: Self = Self { text: 0, words: 0, all: 0 };
}

/// Proof-reads the formulas that were asked for, as far as they changed since the record.
pub fn read(opened: &Opened, evidence: &Evidence, record: &Record) -> Proof {
    let inputs = Inputs::of(opened, evidence);
    let still = |name: &str| unchanged(opened, &inputs, record, name);
    let kept: BTreeMap<&str, &Kept> =
        opened.book.formulas.keys().filter_map(|name| Some((name.as_str(), still(name)?))).collect();
    let mut formulas = from_record(opened, record);
    let mut found = Vec::new();
    // What a formula is made by way of comes along, so that its page leads to no page that is not there.
    let mut asked: BTreeSet<String> = opened.names().into_iter().map(str::to_owned).collect();
    let mut done = BTreeSet::new();
    while !asked.is_empty() {
        let changed: Vec<&str> =
            asked.iter().map(String::as_str).filter(|name| kept.get(name).is_none_or(|kept| !kept.is_spotless)).collect();
        for (card, photograph, own) in proof_read(opened, evidence, &changed) {
            let fresh = Proofed { card, photograph, prints: Prints::NONE, is_spotless: own.is_empty(), is_due: true };
            found.extend(own);
            formulas.insert(fresh.card.name.clone(), fresh);
        }
        let used = |name: &String| formulas.get(name).map(|one| one.card.formulas.clone()).unwrap_or_default();
        let next: BTreeSet<String> = asked.iter().flat_map(used).collect();
        done.append(&mut asked);
        asked = next.into_iter().filter(|name| !done.contains(name) && opened.book.formulas.contains_key(name)).collect();
    }
    for name in done {
        let uses = |other: &str| formulas.get(other).map(|one| one.card.formulas.as_slice());
        let photograph = formulas.get(&name).and_then(|one| one.photograph.as_deref());
        let prints = prints(opened, &inputs, &name, uses, photograph).unwrap_or(Prints::NONE);
        if let Some(one) = formulas.get_mut(&name) {
            (one.prints, one.is_due) = (prints, true);
        }
    }
    Proof { found: opened.in_order(found), formulas }
}

/// A formula that was not asked for stays in the lists as it was last told of.
fn from_record(opened: &Opened, record: &Record) -> BTreeMap<String, Proofed> {
    let still = record.formulas.iter().filter(|(name, _)| opened.book.formulas.contains_key(*name));
    let proofed = |(name, one): (&String, &Kept)| {
        let prints = Prints { text: one.text, words: one.words, all: one.all };
        let (card, photograph) = (one.card.clone(), one.photograph.clone());
        (name.clone(), Proofed { card, photograph, prints, is_spotless: one.is_spotless, is_due: false })
    };
    still.map(proofed).collect()
}

fn proof_read(opened: &Opened, evidence: &Evidence, names: &[&str]) -> Vec<(Card, Option<String>, Vec<Diagnostic>)> {
    let kitchen = opened.book.kitchen();
    opened.each(names, |checked| {
        let photograph = checked.value.head.photograph.as_ref().map(|one| one.file.clone());
        let unfounded: Vec<Diagnostic> = evidence.unfounded(&checked.value).collect();
        let card = Card::of(&checked.value, &opened.book.settings);
        let found = opened.proof_read(checked, &kitchen).into_iter().chain(unfounded).collect();
        (card, photograph, found)
    })
}

fn prints<'u>(
    opened: &Opened,
    inputs: &Inputs,
    name: &str,
    uses: impl Fn(&str) -> Option<&'u [String]>,
    photograph: Option<&str>,
) -> Option<Prints> {
    let words = inputs.words(name, uses)?;
    let photograph = photograph.map(|file| opened.folder.join(file));
    Some(Prints { text: inputs.text(name)?, words, all: inputs.all(words, photograph.as_deref()) })
}

/// What the record keeps of a formula, if nothing that it depends on changed since.
fn unchanged<'r>(opened: &Opened, inputs: &Inputs, record: &'r Record, name: &str) -> Option<&'r Kept> {
    let kept = record.formulas.get(name)?;
    // What a formula uses is known from the record only as long as its text is the same.
    let uses = |other: &str| {
        let one = record.formulas.get(other)?;
        (inputs.text(other) == Some(one.text)).then_some(one.card.formulas.as_slice())
    };
    let prints = prints(opened, inputs, name, uses, kept.photograph.as_deref())?;
    (prints.all == kept.all).then_some(kept)
}
