//! Which formulas use which: base formulas are written once and linked.

use super::card::Card;
use std::collections::{BTreeMap, BTreeSet};

/// A formula that is linked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// Its name.
    pub name: String,
    /// What readers see.
    pub title: String,
    /// Its own language, where that is not the book's.
    pub language: Option<String>,
}

impl Link {
    fn to(card: &Card) -> Self {
        Self { name: card.name.clone(), title: card.title.clone(), language: card.language.clone() }
    }
}

/// The links between the formulas of a book.
#[derive(Clone, Debug, Default)]
pub struct Links {
    used_in: BTreeMap<String, Vec<Link>>,
    translations: BTreeMap<String, Vec<Link>>,
}

impl Links {
    /// The links that the cards of a book make.
    pub fn of<'c>(cards: impl Iterator<Item = &'c Card>) -> Self {
        let cards: BTreeMap<&str, &Card> = cards.map(|card| (card.name.as_str(), card)).collect();
        let mut used_in: BTreeMap<String, Vec<Link>> = BTreeMap::new();
        for card in cards.values() {
            for used in &card.formulas {
                used_in.entry(used.clone()).or_default().push(Link::to(card));
            }
        }
        Self { used_in, translations: translated(&cards) }
    }

    /// The formulas that the product of one goes into.
    #[must_use]
    pub fn used_in(&self, formula: &str) -> &[Link] {
        self.used_in.get(formula).map(Vec::as_slice).unwrap_or_default()
    }

    /// The same recipe in other languages.
    #[must_use]
    pub fn translations(&self, formula: &str) -> &[Link] {
        self.translations.get(formula).map(Vec::as_slice).unwrap_or_default()
    }
}

/// Who is said to be the same recipe by either side, and by way of others: readers find each from each. Of several in
/// one language none can be told to be the one.
fn translated(cards: &BTreeMap<&str, &Card>) -> BTreeMap<String, Vec<Link>> {
    let mut beside: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for (name, card) in cards {
        for other in card.translations.iter().filter_map(|other| cards.get_key_value(other.as_str())) {
            beside.entry(name).or_default().insert(other.0);
            beside.entry(other.0).or_default().insert(name);
        }
    }
    let mut told = BTreeMap::new();
    for name in beside.keys() {
        let (mut met, mut way) = (BTreeSet::from([*name]), vec![*name]);
        while let Some(here) = way.pop() {
            way.extend(beside[here].iter().filter(|other| met.insert(other)));
        }
        let mut languages: BTreeMap<Option<&str>, Vec<&Card>> = BTreeMap::new();
        for one in met {
            languages.entry(cards[one].language.as_deref()).or_default().push(cards[one]);
        }
        let own = cards[name].language.as_deref();
        let alone = languages.iter().filter(|(language, all)| **language != own && all.len() == 1);
        told.insert((*name).to_owned(), alone.map(|(_, all)| Link::to(all[0])).collect());
    }
    told
}
