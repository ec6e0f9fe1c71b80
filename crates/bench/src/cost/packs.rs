//! Ingredients by their packs: which price holds, what a pack weighs, what is bought for what is weighed in.

use super::{Item, decimal};
use formula::larder::weighs;
use formula::read::{Pack, Prices};
use formula::{Content, Formula, Ingredient};
use quantity::{Count, Fraction, Mass};
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use toml::value::Date;

/// Every ingredient that is weighed in, whether or not it is taken out again: it was paid for. At the prices of a day, or
/// at the latest.
pub fn items(formula: &Formula, prices: &Prices, day: Option<Date>, missing: &mut Vec<String>) -> Vec<Item> {
    let mut items = Vec::new();
    for (ingredient, mass) in weighed(formula) {
        // Water from the tap costs next to nothing, and no book prices it.
        match on(prices, ingredient, day).map(|pack| (pack, in_pack(pack, ingredient))) {
            _ if ingredient.is_water() => {}
            Some((pack, Some(holds))) => {
                let bought = bought(edible(pack, ingredient), mass);
                let costs = by_pack(pack, holds, bought);
                let pack = (pack.pack.value.to_string(), pack.costs.clone(), pack.on);
                items.push(Item { title: ingredient.called.clone(), bought, costs: costs.unwrap_or_default(), pack });
            }
            Some(_) => missing.push(format!("{} by its pack: its density or piece weight is unknown", ingredient.called)),
            None => missing.push(ingredient.called.clone()),
        }
    }
    items.sort_by_key(|item| std::cmp::Reverse(item.costs));
    items
}

/// Every ingredient with all that is weighed in of it.
pub fn weighed(formula: &Formula) -> Vec<(&Ingredient, Mass)> {
    let mut weighed: BTreeMap<&str, (&Ingredient, Mass)> = BTreeMap::new();
    for (_, line) in formula.lines() {
        let mut add = |one| {
            let (ingredient, mass): (&Ingredient, Mass) = one;
            weighed.entry(&ingredient.name).or_insert((ingredient, Mass::ZERO)).1 += mass;
        };
        match &line.content {
            Content::Ingredient(one) => add((one, line.mass.value)),
            Content::Formula(blend) => blend.ingredients.iter().for_each(|(one, _, grams)| add((one, line.mass.value * *grams))),
            Content::Stage(..) => {}
        }
    }
    weighed.into_values().filter(|(_, mass)| *mass > Mass::ZERO).collect()
}

/// What is bought for what is weighed in, of which that share is edible: peel, shell and stone too.
pub fn bought(edible: Fraction, mass: Mass) -> Mass {
    if edible > Fraction::ZERO { mass * (1.0 / edible.as_ratio()) } else { mass }
}

/// The whole packs that hold what is weighed in of an ingredient: how many, and the pack; none where no price tells it.
#[must_use]
pub fn whole_packs<'p>(ingredient: &'p Ingredient, mass: Mass, prices: &'p Prices) -> Option<(Count, &'p Pack)> {
    let pack = on(prices, ingredient, None)?;
    let holds = in_pack(pack, ingredient)?;
    Some((Count::pieces((bought(edible(pack, ingredient), mass) / holds - 1e-9).ceil()), pack))
}

/// What a gram of an ingredient costs as it is weighed in, peel, shell and stone paid for too; nothing for water,
/// none where no price tells it.
#[must_use]
pub fn a_gram(ingredient: &Ingredient, prices: &Prices) -> Option<Decimal> {
    if ingredient.is_water() {
        return Some(Decimal::ZERO);
    }
    let pack = on(prices, ingredient, None)?;
    // A kilogram, so that what is rounded to a millionth of a gram is nothing.
    let bought = bought(edible(pack, ingredient), Mass::grams(1000.0));
    by_pack(pack, in_pack(pack, ingredient)?, bought)?.checked_div(Decimal::ONE_THOUSAND)
}

/// The price of an ingredient that held on a day, or else its first; without a day the latest. Of those without a date
/// the last written.
fn on<'p>(prices: &'p Prices, ingredient: &'p Ingredient, day: Option<Date>) -> Option<&'p Pack> {
    let own = || of(prices, ingredient);
    match day {
        None => own().max_by_key(|pack| pack.on),
        Some(day) => {
            let until = own().filter(|pack| pack.on.is_none_or(|on| on <= day)).max_by_key(|pack| pack.on);
            until.or_else(|| own().min_by_key(|pack| pack.on))
        }
    }
}

/// All prices of an ingredient.
pub fn of<'p>(prices: &'p Prices, ingredient: &'p Ingredient) -> impl Iterator<Item = &'p Pack> {
    let is_it = |pack: &&Pack| pack.of.value == ingredient.name || ingredient.also.contains(&pack.of.value);
    prices.packs.iter().filter(is_it)
}

/// What a pack weighs.
pub fn in_pack(pack: &Pack, ingredient: &Ingredient) -> Option<Mass> {
    weighs(&pack.pack.value, ingredient, edible(pack, ingredient)).filter(|holds| *holds > Mass::ZERO)
}

/// What of it is eaten: as the price says, or else as the table does.
fn edible(pack: &Pack, ingredient: &Ingredient) -> Fraction {
    pack.edible.unwrap_or(ingredient.edible)
}

/// What so much of an ingredient costs by a pack that weighs that. Multiplied before it is divided: thirds of a pack then
/// cost what they cost, to the last place.
pub fn by_pack(pack: &Pack, holds: Mass, bought: Mass) -> Option<Decimal> {
    (pack.costs.amount * decimal(bought.as_grams())).checked_div(decimal(holds.as_grams()))
}
