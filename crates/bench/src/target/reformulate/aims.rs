//! The figures that a reformulation can aim at, each a sum over the lines: shares of all flour, and a piece's price.

use super::super::{Amount, price};
use crate::cost::{a_gram, decimal};
use crate::exchange::{Desk, Unfit};
use formula::arithmetic::{Figures, figures, overall};
use formula::ingredient::Figure;
use formula::read::{Group, Prices};
use formula::{Formula, Ingredient};
use quantity::{Count, Fraction, Money};
use rust_decimal::prelude::ToPrimitive;

/// A figure that can be aimed at.
pub struct Aim {
    /// Its name.
    pub name: &'static str,
    /// What it counts.
    pub of: Of,
    /// What a gram of an ingredient brings to it; none where no source says.
    pub brings: fn(&Ingredient, &Prices) -> Option<f64>,
    /// What it is now, worked out as the rest of the house does.
    pub now: fn(&Desk) -> Result<Now, Unfit>,
    /// How its figure is told, of what it is told now.
    pub told: fn(f64, &Amount) -> Amount,
}

/// What a figure counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// What counts as flour.
    Flour,
    /// Everything else that goes into the product.
    Rest,
    /// All that is bought.
    All,
}

/// A figure of the formula as it is.
pub struct Now {
    /// The figure.
    pub figure: f64,
    /// What the sum over the lines is divided by: all flour in gram, or pieces.
    pub among: f64,
    /// As it is told.
    pub told: Amount,
}

/// Every figure; a line more for each.
pub static ALL: &[Aim] = &[
    of_flour("hydration", Of::Rest, |one, _| whole(one.is_water()), |desk| sheet(desk, |sheet| sheet.nominal_hydration)),
    of_flour("true-hydration", Of::Rest, |one, _| water(one), |desk| sheet(desk, |sheet| sheet.true_hydration.value)),
    of_flour("salt", Of::Rest, |one, _| whole(one.group == Group::Salt), |desk| sheet(desk, |sheet| sheet.salt)),
    of_flour("sugars", Of::Rest, |one, _| holds(one, Figure::Sugars), |desk| sheet(desk, |sheet| sheet.sugars.value)),
    of_flour("fat", Of::Rest, |one, _| holds(one, Figure::Fat), |desk| sheet(desk, |sheet| sheet.fat.value)),
    of_flour("egg", Of::Rest, |one, _| whole(one.group == Group::Egg), |desk| sheet(desk, |sheet| sheet.egg)),
    of_flour("protein", Of::Flour, |one, _| holds(one, Figure::Protein), |desk| sheet(desk, |sheet| sheet.flour_protein.value)),
    // What has no price is not in the sum, before or after, and is told.
    Aim { name: "price", of: Of::All, brings: |one, prices| a_gram(one, prices)?.to_f64(), now: a_piece, told: money },
];

/// A share of all flour.
const fn of_flour(
    name: &'static str,
    of: Of,
    brings: fn(&Ingredient, &Prices) -> Option<f64>,
    now: fn(&Desk) -> Result<Now, Unfit>,
) -> Aim {
    Aim { name, of, brings, now, told: |figure, _| Amount::Share(Fraction::ratio(figure)) }
}

fn whole(counts: bool) -> Option<f64> {
    Some(if counts { 1.0 } else { 0.0 })
}

fn holds(one: &Ingredient, figure: Figure) -> Option<f64> {
    one.composition.share(figure).map(Fraction::as_ratio)
}

fn water(one: &Ingredient) -> Option<f64> {
    if one.is_water() { Some(1.0) } else { holds(one, Figure::Water) }
}

/// A figure as the sheet works it out.
fn sheet(desk: &Desk, figure: fn(&Figures) -> Fraction) -> Result<Now, Unfit> {
    let formula: &Formula = desk.before;
    let whole = overall(formula, 0);
    let sheet = figures(&whole).ok_or_else(|| Unfit::NotSo("it has no flour, of which the figures are shares".to_owned()))?;
    let share = figure(&sheet);
    Ok(Now { figure: share.as_ratio(), among: whole.total_flour.as_grams(), told: Amount::Share(share) })
}

fn a_piece(desk: &Desk) -> Result<Now, Unfit> {
    let costs = price::costed(desk, desk.before)?;
    let amount = costs.a_piece(costs.total()).unwrap_or_default();
    let among = costs.makes.0.map_or(1.0, Count::as_pieces);
    Ok(Now {
        figure: amount.to_f64().unwrap_or_default(),
        among,
        told: Amount::Price(Money { amount, currency: costs.currency }),
    })
}

fn money(figure: f64, like: &Amount) -> Amount {
    let currency = if let Amount::Price(money) = like { money.currency.clone() } else { String::new() };
    Amount::Price(Money { amount: decimal(figure), currency })
}
