//! Which ingredients have their quantity stated: those that the name names, and those that the author stresses.

use super::finished::{Food, Part, What};
use quantity::{Fraction, Mass};
use science::nutrition::cooking;
use std::collections::{BTreeMap, BTreeSet};

/// What is asked for.
#[derive(Clone, Debug, Default)]
pub struct Asked {
    name: BTreeSet<String>,
    stressed: BTreeSet<String>,
}

/// The quantity of an ingredient over the whole food.
#[derive(Clone, Debug, PartialEq)]
pub struct Quantity {
    /// What it is of.
    pub title: String,
    /// What went in, as a share of the finished food.
    pub share: Fraction,
    /// In how many places of the list it stands.
    pub places: usize,
}

/// Words that say how something is, not what it is: naming them stresses nothing.
const HOW: [&str; 62] = [
    "a",
    "active",
    "all",
    "and",
    "baking",
    "blanched",
    "boiled",
    "bread",
    "brown",
    "cake",
    "caster",
    "cooked",
    "creamed",
    "dark",
    "dried",
    "dry",
    "double",
    "fat",
    "fine",
    "flour",
    "for",
    "fresh",
    "frying",
    "granulated",
    "griddle",
    "ground",
    "icing",
    "in",
    "instant",
    "light",
    "low",
    "medium",
    "of",
    "or",
    "pastry",
    "peeled",
    "plain",
    "purpose",
    "raw",
    "ripe",
    "salted",
    "self",
    "raising",
    "soft",
    "sponge",
    "strong",
    "the",
    "tin",
    "unsalted",
    "white",
    "whole",
    "wholemeal",
    "with",
    "overnight",
    "dough",
    "make",
    "aus",
    "mit",
    "nach",
    "und",
    "vom",
    "von",
];

impl Asked {
    /// What a food's name names, and what its author stresses by the names of the formula.
    #[must_use]
    pub fn of(name: &str, stressed: impl IntoIterator<Item = String>) -> Self {
        Self { name: words(name), stressed: stressed.into_iter().collect() }
    }

    /// Whether the quantity of a part is stated.
    #[must_use]
    pub fn is_asked(&self, part: &Part) -> bool {
        if self.stressed.contains(&part.name) {
            return true;
        }
        match &part.what {
            What::Ingredient(one) => {
                let mut own = words(&one.name);
                own.extend(words(&one.called));
                // What a pack lists in brackets is its own affair.
                own.extend(words(part.title.split('(').next().unwrap_or_default()));
                !one.is_water() && !own.is_disjoint(&self.name)
            }
            // Of a compound its last word is the thing: “quince-and-bay syrup” is a syrup.
            What::Compound(_) => in_order(&part.title).last().is_some_and(|last| self.name.contains(last)),
        }
    }
}

/// The quantities over the whole food, the largest first; what is only infused and taken out again has none.
#[must_use]
pub fn quantities(food: &Food, asked: &Asked) -> Vec<Quantity> {
    let whole = food.weighs();
    let mut sums: BTreeMap<&str, (Mass, usize)> = BTreeMap::new();
    let mut open: Vec<&Part> = food.parts.iter().collect();
    while let Some(part) = open.pop() {
        if asked.is_asked(part) {
            let sum = sums.entry(&part.title).or_insert((Mass::ZERO, 0));
            *sum = (sum.0 + part.mass, sum.1 + 1);
        }
        if let What::Compound(inner) = &part.what {
            open.extend(&inner.parts);
        }
    }
    let stated = sums.into_iter().filter(|(_, (mass, _))| *mass > Mass::ZERO && whole > Mass::ZERO);
    let mut all: Vec<Quantity> = stated
        .map(|(title, (mass, places))| Quantity {
            title: title.to_owned(),
            share: cooking::share_of_finished(mass, whole),
            places,
        })
        .collect();
    all.sort_by(|a, b| b.share.as_ratio().total_cmp(&a.share.as_ratio()));
    all
}

/// The words of a text that say what something is, small and in the singular.
fn words(text: &str) -> BTreeSet<String> {
    in_order(text).into_iter().collect()
}

fn in_order(text: &str) -> Vec<String> {
    let small = text.to_lowercase();
    let parts = small.split(|c: char| !c.is_alphabetic()).filter(|word| word.chars().count() > 1 && !HOW.contains(word));
    parts.map(singular).collect()
}

/// The singular of a regular English plural, good enough to compare names.
fn singular(word: &str) -> String {
    match word.strip_suffix("ies") {
        Some(stem) if stem.len() > 2 => return format!("{stem}y"),
        _ => {}
    }
    match word.strip_suffix('s') {
        Some(stem) if stem.len() > 2 && !stem.ends_with('s') => stem.to_owned(),
        _ => word.to_owned(),
    }
}
