//! What there is of one ingredient, as people say it, in gram: "3", "2 large", "1 cup", "1/2 l", "400 g".

use super::scale::{ScaleFault, lines_named};
use crate::ingredient::{Ingredient, eggs};
use crate::read::{Amount, EggSize};
use crate::resolve::formula::{Content, Formula};
use quantity::{Kind, Mass, Measure, SpoonSystem};

/// What an amount of a formula's ingredient weighs; of a range its middle.
///
/// # Errors
/// [`ScaleFault`] if the formula has no such line, or the amount cannot be weighed.
pub fn at_hand(formula: &Formula, name: &str, amount: &Amount, spoons: SpoonSystem, usual: EggSize) -> Result<Mass, ScaleFault> {
    let line = lines_named(formula, name).next().ok_or_else(|| ScaleFault::NoSuchLine(name.to_owned()))?;
    let ingredient = match &line.content {
        Content::Ingredient(ingredient) => Some(ingredient.as_ref()),
        Content::Stage(..) | Content::Formula(_) => None,
    };
    match amount {
        Amount::Part(_) => Err(ScaleFault::NoAmountAtHand),
        Amount::Eggs(count, size) => {
            let one = ingredient.and_then(|ingredient| eggs::one(ingredient, *size));
            Ok(one.ok_or_else(|| ScaleFault::NoEgg(line.title.clone()))? * count.middle())
        }
        Amount::Measure(measure) => match measure.unit.kind() {
            Kind::Mass => Ok(Mass::grams(stored(measure, spoons))),
            Kind::Volume => {
                let density = ingredient.and_then(|ingredient| ingredient.density.as_ref());
                let (density, _) = density.ok_or_else(|| ScaleFault::NoDensity(line.title.clone()))?;
                Ok(quantity::Volume::millilitres(stored(measure, spoons)) * *density)
            }
            Kind::Count => {
                let one = ingredient.and_then(|ingredient| one_piece(ingredient, line.egg_size(usual)));
                Ok(one.ok_or_else(|| ScaleFault::NoPieceWeight(line.title.clone()))? * measure.value.middle())
            }
            Kind::Temperature | Kind::Time | Kind::Share | Kind::Length | Kind::Power => Err(ScaleFault::NoAmountAtHand),
        },
    }
}

/// A figure in the stored scale, of a range the middle.
fn stored(measure: &Measure, spoons: SpoonSystem) -> f64 {
    measure.value.middle() * measure.unit.size(spoons)
}

fn one_piece(ingredient: &Ingredient, size: EggSize) -> Option<Mass> {
    eggs::one(ingredient, size).or_else(|| ingredient.piece.as_ref().map(|piece| piece.weighs))
}
