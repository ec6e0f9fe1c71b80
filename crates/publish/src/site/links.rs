//! Which formulas use which: base formulas are written once and linked.

use super::card::Card;
use std::collections::BTreeMap;

/// A formula that is linked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// Its name.
    pub name: String,
    /// What readers see.
    pub title: String,
}

/// The links between the formulas of a book.
#[derive(Clone, Debug, Default)]
pub struct Links {
    used_in: BTreeMap<String, Vec<Link>>,
}

impl Links {
    /// The links that the cards of a book make.
    pub fn of<'c>(cards: impl Iterator<Item = &'c Card>) -> Self {
        let mut used_in: BTreeMap<String, Vec<Link>> = BTreeMap::new();
        for card in cards {
            for used in &card.formulas {
                let link = Link { name: card.name.clone(), title: card.title.clone() };
                used_in.entry(used.clone()).or_default().push(link);
            }
        }
        Self { used_in }
    }

    /// The formulas that the product of one goes into.
    #[must_use]
    pub fn used_in(&self, formula: &str) -> &[Link] {
        self.used_in.get(formula).map(Vec::as_slice).unwrap_or_default()
    }
}
