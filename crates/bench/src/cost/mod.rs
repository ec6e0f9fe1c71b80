//! What a formula costs: ingredients by their packs, the energy of oven and hob, the work of hands. What has no
//! price is a gap and is said, never nothing.

mod energy;
mod history;
mod larder;
mod packs;
mod paid;
mod price;

pub use energy::{Energy, energy};
pub use history::{Moved, Then, history};
pub use larder::there_already;
pub use packs::{a_gram, whole_packs};
pub use paid::{Paid, Paying, Said, gathered, paid};
pub use price::{By, Price, Sale, by_share, prices, share_of};

use crate::forecast::{Forecast, Surroundings};
use formula::prices::currency;
use formula::read::{Attention, BookSettings, Prices};
use formula::{Content, Formula};
use quantity::{Between, Count, Mass, Money, TimeSpan};
use rust_decimal::Decimal;
use rust_decimal::prelude::FromPrimitive;
use toml::value::Date;

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
    /// What a piece is packed in costs.
    pub packaging: Decimal,
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
    /// How much is in its pack, what that costs, and on which day it did.
    pub pack: (String, Money, Option<Date>),
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

    /// What all pieces are packed in.
    #[must_use]
    pub fn of_packaging(&self) -> Decimal {
        self.packaging * self.makes.0.map_or(Decimal::ONE, |pieces| decimal(pieces.as_pieces()))
    }

    /// The same with the time of hands as a plan reckons it.
    #[must_use]
    pub fn with_hands(mut self, hands: TimeSpan, prices: &Prices) -> Self {
        self.work = (hands, prices.hour.as_ref().map(|hour| hour.amount * decimal(hands.as_hours())));
        self
    }

    /// Everything but the energy.
    #[must_use]
    pub fn without_energy(&self) -> Decimal {
        self.ingredients() + self.of_hands() + self.of_packaging()
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
        self.of_100_g(self.total())
    }

    /// What 100 g have of an amount.
    #[must_use]
    pub fn of_100_g(&self, whole: Decimal) -> Option<Decimal> {
        (whole * Decimal::ONE_HUNDRED).checked_div(decimal(self.makes.1.as_grams()))
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
    let items = packs::items(formula, prices, None, &mut missing);
    let around = &forecast.surroundings;
    let energy: Vec<_> = energy(formula, forecast).into_iter().map(|one| priced(one, prices, around)).collect();
    if energy.iter().any(|(_, costs)| costs.is_none()) {
        missing.push("a kilowatt-hour of electricity or gas".to_owned());
    }
    for (_, line) in formula.lines() {
        if let Content::Formula(blend) = &line.content {
            let heat = format!("the heat of {}, which is made beforehand", blend.title);
            if !missing.contains(&heat) {
                missing.push(heat);
            }
        }
    }
    let hands = hands(formula);
    let work = prices.hour.as_ref().map(|hour| hour.amount * decimal(hands.as_hours()));
    if work.is_none() {
        missing.push("an hour of work".to_owned());
    }
    let pieces = formula.components.iter().find_map(|component| component.yields.pieces);
    let done = formula.components.iter().map(|component| component.yields.done()).sum();
    let packaging = prices.packaging.as_ref().map_or(Decimal::ZERO, |packaging| packaging.amount);
    Some(Cost { currency, items, energy, work: (hands, work), packaging, makes: (pieces, done), missing })
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
