//! What a formula costs: ingredients by their packs, the energy of oven and hob, the work of hands. What has no
//! price is a gap and is said, never nothing.

mod energy;

pub use energy::{Energy, energy};

use crate::forecast::{Forecast, Surroundings};
use formula::prices::currency;
use formula::read::{Attention, BookSettings, Pack, Prices};
use formula::{Content, Formula, Ingredient};
use quantity::{Between, Count, Kind, Mass, SpoonSystem, TimeSpan};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use std::collections::BTreeMap;

/// What a formula costs, unrounded.
#[derive(Clone, Debug)]
pub struct Cost {
    /// The currency's three letters of ISO 4217.
    pub currency: String,
    /// Its ingredients, the dearest first.
    pub items: Vec<Item>,
    /// The energy of its heats, and what it costs at the price of a kilowatt-hour.
    pub energy: Vec<(Energy, Option<Between<Decimal>>)>,
    /// The time of hands, and what it costs at the price of an hour.
    pub work: (TimeSpan, Option<Decimal>),
    /// What comes of it: pieces, if the first component that is made in pieces says so, and weight.
    pub makes: (Option<Count>, Mass),
    /// What has no price.
    pub missing: Vec<String>,
}

/// What an ingredient costs.
#[derive(Clone, Debug)]
pub struct Item {
    /// The ingredient, as a list calls it.
    pub title: String,
    /// How much of it is bought, peel and shell included.
    pub bought: Mass,
    /// What that costs.
    pub costs: Decimal,
}

impl Cost {
    /// All ingredients together.
    #[must_use]
    pub fn ingredients(&self) -> Decimal {
        self.items.iter().map(|item| item.costs).sum()
    }

    /// The middle of what the energy costs, as far as it has a price.
    #[must_use]
    pub fn of_energy(&self) -> Decimal {
        self.energy.iter().filter_map(|(_, costs)| costs.map(|costs| (costs.from + costs.to) / Decimal::TWO)).sum()
    }

    /// What hands cost, if an hour has a price.
    #[must_use]
    pub fn of_hands(&self) -> Decimal {
        self.work.1.unwrap_or_default()
    }

    /// Everything but the energy.
    #[must_use]
    pub fn without_energy(&self) -> Decimal {
        self.ingredients() + self.of_hands()
    }

    /// The least and the most that the energy costs, as far as it has a price.
    #[must_use]
    pub fn of_energy_at_most(&self) -> (Decimal, Decimal) {
        let priced = self.energy.iter().filter_map(|(_, costs)| *costs);
        priced.fold((Decimal::ZERO, Decimal::ZERO), |sum, costs| (sum.0 + costs.from, sum.1 + costs.to))
    }

    /// A piece with all that goes with it, if it comes in pieces.
    #[must_use]
    pub fn a_piece(&self, whole: Decimal) -> Option<Decimal> {
        whole.checked_div(decimal(self.makes.0?.as_pieces()))
    }

    /// 100 g of all that is made.
    #[must_use]
    pub fn in_100_g(&self) -> Option<Decimal> {
        (self.total() * Decimal::ONE_HUNDRED).checked_div(decimal(self.makes.1.as_grams()))
    }

    /// Everything that has a price.
    #[must_use]
    pub fn total(&self) -> Decimal {
        self.without_energy() + self.of_energy()
    }
}

/// Works out what a formula costs; none where the book states no prices.
#[must_use]
pub fn cost(formula: &Formula, forecast: &Forecast, prices: &Prices, settings: &BookSettings) -> Option<Cost> {
    let currency = currency(prices, settings)?;
    if prices.packs.is_empty() {
        return None;
    }
    let mut missing = Vec::new();
    let items = items(formula, prices, &mut missing);
    let around = &forecast.surroundings;
    let energy: Vec<_> = energy(formula, forecast).into_iter().map(|one| priced(one, prices, around)).collect();
    if energy.iter().any(|(_, costs)| costs.is_none()) {
        missing.push("a kilowatt-hour of electricity or gas".to_owned());
    }
    let hands = hands(formula);
    let work = prices.hour.as_ref().map(|hour| hour.amount * decimal(hands.as_hours()));
    if work.is_none() {
        missing.push("an hour of work".to_owned());
    }
    let pieces = formula.components.iter().find_map(|component| component.yields.pieces);
    let done = formula.components.iter().map(|component| component.yields.done()).sum();
    Some(Cost { currency, items, energy, work: (hands, work), makes: (pieces, done), missing })
}

/// Every ingredient that is weighed in, whether or not it is taken out again: it was paid for.
fn items(formula: &Formula, prices: &Prices, missing: &mut Vec<String>) -> Vec<Item> {
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
    let mut items = Vec::new();
    for (ingredient, mass) in weighed.into_values().filter(|(_, mass)| *mass > Mass::ZERO) {
        let bought = bought(ingredient, mass);
        // Water from the tap costs next to nothing, and no book prices it.
        match latest(prices, ingredient).map(|pack| (pack, in_pack(pack, ingredient))) {
            _ if ingredient.is_water() => {}
            Some((pack, Some(holds))) if holds > Mass::ZERO => {
                let share = decimal(bought.as_grams()) / decimal(holds.as_grams());
                items.push(Item { title: ingredient.called.clone(), bought, costs: pack.costs.amount * share });
            }
            Some(_) => missing.push(format!("{} by its pack: its density or piece weight is unknown", ingredient.called)),
            None => missing.push(ingredient.called.clone()),
        }
    }
    items.sort_by_key(|item| std::cmp::Reverse(item.costs));
    items
}

/// What is bought of an ingredient for what is weighed in: peel, shell and stone too.
fn bought(ingredient: &Ingredient, mass: Mass) -> Mass {
    if ingredient.edible.as_ratio() > 0.0 { mass * (1.0 / ingredient.edible.as_ratio()) } else { mass }
}

/// The whole packs that hold what is weighed in of an ingredient: how many, and the pack; none where no price tells it.
#[must_use]
pub fn whole_packs<'p>(ingredient: &Ingredient, mass: Mass, prices: &'p Prices) -> Option<(Count, &'p Pack)> {
    let pack = latest(prices, ingredient)?;
    let holds = in_pack(pack, ingredient).filter(|holds| *holds > Mass::ZERO)?;
    Some((Count::pieces((bought(ingredient, mass) / holds - 1e-9).ceil()), pack))
}

/// What a gram of an ingredient costs as it is weighed in, peel, shell and stone paid for too; nothing for water,
/// none where no price tells it.
#[must_use]
pub fn a_gram(ingredient: &Ingredient, prices: &Prices) -> Option<Decimal> {
    if ingredient.is_water() {
        return Some(Decimal::ZERO);
    }
    let pack = latest(prices, ingredient)?;
    let holds = in_pack(pack, ingredient).filter(|holds| *holds > Mass::ZERO)?;
    // A thousand gram, so that what is rounded to a millionth is a share of a kilogram.
    let bought = decimal(bought(ingredient, Mass::grams(1000.0)).as_grams());
    (pack.costs.amount * bought).checked_div(decimal(holds.as_grams()) * Decimal::ONE_THOUSAND)
}

/// The latest price of an ingredient; of those without a date the last written.
fn latest<'p>(prices: &'p Prices, ingredient: &Ingredient) -> Option<&'p Pack> {
    let is_it = |pack: &&Pack| pack.of.value == ingredient.name || ingredient.also.contains(&pack.of.value);
    prices.packs.iter().filter(is_it).max_by_key(|pack| pack.on)
}

/// What a pack weighs.
fn in_pack(pack: &Pack, ingredient: &Ingredient) -> Option<Mass> {
    let spoons = SpoonSystem::Metric;
    match pack.pack.value.unit.kind() {
        Kind::Mass => pack.pack.value.mass(spoons).map(|mass| mass.to),
        Kind::Volume => Some(pack.pack.value.volume(spoons)?.to * ingredient.density.as_ref()?.0),
        _ => {
            let count = pack.pack.value.count(spoons)?.to;
            // What is bought by the piece is bought with its shell, peel or stone.
            let whole = ingredient.piece.as_ref()?.weighs * (1.0 / ingredient.edible.as_ratio());
            Some(whole * count.as_pieces())
        }
    }
}

/// The time of hands: every active step, once for each batch.
fn hands(formula: &Formula) -> TimeSpan {
    let steps = formula.steps().filter(|(_, step)| step.attention == Attention::Active);
    let one = |(at, step): (formula::resolve::formula::StageAt, &formula::Step)| {
        let time = step.time.map_or(TimeSpan::ZERO, crate::forecast::middle);
        time * step.batches(formula.components[at.0].yields.pieces)
    };
    steps.map(one).sum()
}

fn priced(energy: Energy, prices: &Prices, around: &Surroundings) -> (Energy, Option<Between<Decimal>>) {
    let is_gas = energy.on_the_hob && around.heat.ring.heats_by.value == formula::read::HeatsBy::Gas;
    let price = if is_gas { prices.gas.as_ref() } else { prices.electricity.as_ref() };
    let costs = price.map(|price| energy.kilowatt_hours.map(|hours| price.amount * decimal(hours)));
    (energy, costs)
}

/// A figure as a decimal, to a millionth; what is no number counts as nothing.
pub(crate) fn decimal(value: f64) -> Decimal {
    Decimal::from_f64(value).map(|value| value.round_dp(6)).unwrap_or_default()
}
