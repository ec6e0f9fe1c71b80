//! What was paid over time: all that a book ever said of prices, put together into one list.

use super::packs::{by_pack, in_pack, of, weighed};
use formula::Formula;
use formula::read::{Pack, Prices};
use quantity::{Mass, Money};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use toml::value::Date;

/// What a book said of prices when it was saved.
#[derive(Clone, Debug)]
pub struct Said {
    /// The day on which it was saved.
    pub saved: Date,
    /// The packs, in written order.
    pub packs: Vec<Pack>,
}

/// What was paid for an ingredient, the first price first.
#[derive(Clone, Debug, PartialEq)]
pub struct Paid {
    /// The ingredient, as a list calls it.
    pub title: String,
    /// Its prices.
    pub prices: Vec<Paying>,
}

/// A price that was paid from a day on.
#[derive(Clone, Debug, PartialEq)]
pub struct Paying {
    /// The day; none for a price that was there from the first.
    pub on: Option<Date>,
    /// How much is in the pack.
    pub pack: String,
    /// What that costs.
    pub costs: Money,
    /// What a kilogram costs by it; none where nobody knows what the pack weighs.
    pub a_kilogram: Option<Decimal>,
}

/// All prices that were ever said, the first saying first, each on the day from which it counts: its own, or, where it
/// has none, that on which it was first saved. What is said again of a day was put right; what is later than the price
/// that holds, and no longer said, was a mistake; what has no price any more is left out.
#[must_use]
pub fn gathered(said: &[Said]) -> Vec<Pack> {
    let mut all: Vec<Pack> = Vec::new();
    let mut held: BTreeMap<&str, &Pack> = BTreeMap::new();
    for (number, one) in said.iter().enumerate() {
        one.packs.iter().filter(|pack| pack.on.is_some()).for_each(|pack| put(&mut all, pack.clone()));
        let now = holding(&one.packs);
        for (name, pack) in &now {
            let day = pack.on.or((number > 0).then_some(one.saved));
            if pack.on.is_none() && held.get(name).is_none_or(|before| !is_same(before, pack)) {
                put(&mut all, Pack { on: day, ..(*pack).clone() });
            }
            let is_later = |other: &Pack| other.of.value == *name && other.on > day && !one.packs.contains(other);
            all.retain(|other| !is_later(other));
        }
        held = now;
    }
    all.retain(|pack| held.contains_key(pack.of.value.as_str()));
    all
}

/// The price of each thing that holds: the latest, of those without a date the last written.
fn holding(packs: &[Pack]) -> BTreeMap<&str, &Pack> {
    let mut all: BTreeMap<&str, &Pack> = BTreeMap::new();
    for pack in packs {
        let held = all.entry(pack.of.value.as_str()).or_insert(pack);
        if pack.on >= held.on {
            *held = pack;
        }
    }
    all
}

fn put(all: &mut Vec<Pack>, pack: Pack) {
    let is_its = |other: &&mut Pack| other.of.value == pack.of.value && other.on == pack.on && other.from == pack.from;
    match all.iter_mut().find(is_its) {
        Some(other) => *other = pack,
        None => all.push(pack),
    }
}

fn is_same(one: &Pack, other: &Pack) -> bool {
    one.on == other.on && one.pack.value == other.pack.value && one.costs == other.costs && one.edible == other.edible
}

/// What was paid for a formula's ingredients: those that moved most first, then those of one price.
#[must_use]
pub fn paid(formula: &Formula, prices: &Prices) -> Vec<Paid> {
    let mut all = Vec::new();
    for (ingredient, _) in weighed(formula).into_iter().filter(|(one, _)| !one.is_water()) {
        let mut packs: Vec<&Pack> = of(prices, ingredient).collect();
        packs.sort_by_key(|pack| pack.on);
        let one = |pack: &Pack| Paying {
            on: pack.on,
            pack: pack.pack.value.to_string(),
            costs: pack.costs.clone(),
            a_kilogram: in_pack(pack, ingredient).and_then(|holds| by_pack(pack, holds, Mass::grams(1000.0))),
        };
        if !packs.is_empty() {
            all.push(Paid { title: ingredient.called.clone(), prices: packs.into_iter().map(one).collect() });
        }
    }
    all.sort_by_key(|one: &Paid| (one.prices.len() < 2, std::cmp::Reverse(one.moved().map(|moved| moved.abs()))));
    all
}

impl Paid {
    /// By which share of the first price the last one is dearer; cheaper if that is less than nothing.
    #[must_use]
    pub fn moved(&self) -> Option<Decimal> {
        let (first, last) = (self.prices.first()?.a_kilogram?, self.prices.last()?.a_kilogram?);
        (last - first).checked_div(first)
    }
}
