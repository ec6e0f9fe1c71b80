//! What to ask for it: by the share that ingredients may take, by the margin that is to be left, and what a stated price
//! leaves. Tax stands apart. Nothing is rounded here.

use super::{Cost, decimal};
use formula::read::Wanted;
use quantity::Fraction;
use rust_decimal::Decimal;

/// What one of what is sold costs.
#[derive(Clone, Debug, PartialEq)]
pub struct Sale {
    /// Whether it is sold by the piece; else by 100 g.
    pub by_piece: bool,
    /// Its ingredients, what is made and not sold shared out.
    pub ingredients: Decimal,
    /// All that it costs, likewise.
    pub total: Decimal,
    /// Prices with what they leave.
    pub prices: Vec<Price>,
}

/// A price before tax, and what it leaves.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    /// How it is found.
    pub by: By,
    /// The price before tax.
    pub before_tax: Decimal,
    /// The same with tax, where a tax is stated.
    pub with_tax: Option<Decimal>,
    /// Ingredients as a share of the price before tax.
    pub food_cost: Option<Decimal>,
    /// What is left of it when costs and fees are paid, as a share; below nothing where it does not pay.
    pub margin: Option<Decimal>,
}

/// How a price is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum By {
    /// By the share that ingredients may take.
    FoodCost(Fraction),
    /// By the margin that is to be left.
    Margin(Fraction),
    /// It is stated.
    Stated,
}

/// What costs so much and may be such a share of a price: that price. None for a share of nothing.
#[must_use]
pub fn by_share(costs: Decimal, share: Decimal) -> Option<Decimal> {
    costs.checked_div(share).filter(|_| share > Decimal::ZERO)
}

/// What share of a price a cost is. None for a price of nothing.
#[must_use]
pub fn share_of(costs: Decimal, price: Decimal) -> Option<Decimal> {
    costs.checked_div(price).filter(|_| price > Decimal::ZERO)
}

/// The prices that are wanted of what is sold; none where nothing is made.
#[must_use]
pub fn prices(cost: &Cost, wanted: &Wanted, stated: Option<Decimal>) -> Option<Sale> {
    let pieces = cost.makes.0.map(|pieces| decimal(pieces.as_pieces())).filter(|pieces| *pieces > Decimal::ZERO);
    let hundreds = decimal(cost.makes.1.as_grams()) / Decimal::ONE_HUNDRED;
    let sold = pieces.unwrap_or(hundreds) * decimal(wanted.unsold.left().as_ratio());
    let (ingredients, total) = (cost.ingredients().checked_div(sold)?, cost.total().checked_div(sold)?);
    let fees = decimal(wanted.fees.as_ratio());
    let price = |by: By, before_tax: Decimal| Price {
        by,
        before_tax,
        with_tax: wanted.tax.map(|tax| before_tax * (Decimal::ONE + decimal(tax.as_ratio()))),
        food_cost: share_of(ingredients, before_tax),
        margin: share_of(total, before_tax).map(|share| Decimal::ONE - fees - share),
    };
    let by_food = || {
        let share = wanted.food_cost?;
        Some(price(By::FoodCost(share), by_share(ingredients, decimal(share.as_ratio()))?))
    };
    let by_margin = || {
        let left = wanted.margin?;
        Some(price(By::Margin(left), by_share(total, Decimal::ONE - fees - decimal(left.as_ratio()))?))
    };
    // A stated price is what the customer pays: its tax is taken out of it first.
    let as_stated = || {
        let (stated, tax) = (stated?, wanted.tax.map_or(Decimal::ZERO, |tax| decimal(tax.as_ratio())));
        Some(Price { with_tax: wanted.tax.map(|_| stated), ..price(By::Stated, stated / (Decimal::ONE + tax)) })
    };
    let prices = [by_food(), by_margin(), as_stated()].into_iter().flatten().collect();
    Some(Sale { by_piece: pieces.is_some(), ingredients, total, prices })
}
