//! How the cost of ingredients moved with their prices.

use super::packs::{items, of, weighed};
use formula::Formula;
use formula::read::Prices;
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};
use toml::value::Date;

/// What ingredients cost from a day on.
#[derive(Clone, Debug, PartialEq)]
pub struct Then {
    /// The day; none for the first prices.
    pub on: Option<Date>,
    /// What all of them cost then.
    pub ingredients: Decimal,
    /// Those whose price moved on that day, the one that moved most first.
    pub moved: Vec<Moved>,
}

/// An ingredient whose price moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// The ingredient.
    pub title: String,
    /// What it cost in this formula before, and from then on.
    pub costs: (Decimal, Decimal),
}

/// The cost of ingredients at the first prices and at each later one that moved it; empty where none has two prices.
/// Before its first price an ingredient is taken to have cost that.
#[must_use]
pub fn history(formula: &Formula, prices: &Prices) -> Vec<Then> {
    let mut days: BTreeSet<Date> = BTreeSet::new();
    for (ingredient, _) in weighed(formula) {
        let own: BTreeSet<Date> = of(prices, ingredient).filter_map(|pack| pack.on).collect();
        let has_undated = of(prices, ingredient).any(|pack| pack.on.is_none());
        days.extend(own.into_iter().skip(usize::from(!has_undated)));
    }
    let Some(first) = days.first().copied() else { return Vec::new() };
    let before = Date { year: 0, ..first };
    let mut last = at(formula, prices, before);
    let mut course = vec![Then { on: None, ingredients: last.values().sum(), moved: Vec::new() }];
    for day in days {
        let now = at(formula, prices, day);
        let changed = now.iter().filter_map(|(title, costs)| Some((title, *last.get(title)?, *costs)));
        let mut moved: Vec<Moved> = changed
            .filter(|(_, was, is)| was != is)
            .map(|(title, was, is)| Moved { title: title.clone(), costs: (was, is) })
            .collect();
        moved.sort_by_key(|one| std::cmp::Reverse((one.costs.1 - one.costs.0).abs()));
        if !moved.is_empty() {
            course.push(Then { on: Some(day), ingredients: now.values().sum(), moved });
        }
        last = now;
    }
    if course.len() > 1 { course } else { Vec::new() }
}

fn at(formula: &Formula, prices: &Prices, day: Date) -> BTreeMap<String, Decimal> {
    items(formula, prices, Some(day), &mut Vec::new()).into_iter().map(|item| (item.title, item.costs)).collect()
}
