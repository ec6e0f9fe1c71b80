//! Eggs come whole: to the next whole egg, or beaten and weighed.

use crate::ingredient::{eggs, Ingredient};
use crate::read::EggSize;
use quantity::{Fraction, Mass};

/// A way to come by an amount of egg.
#[derive(Clone, Debug, PartialEq)]
pub struct EggChoice {
    /// How many eggs are broken.
    pub eggs: u32,
    /// What is used of them.
    pub used: Mass,
    /// How far that is from what the formula asks, as a share of it.
    pub off: Fraction,
    /// What is left over when they are beaten and weighed; nothing when used whole.
    pub left: Mass,
}

/// The choices for an amount of egg: whole eggs below and above, and beaten egg by weight.
/// None for what is no egg.
#[must_use]
pub fn whole_eggs(ingredient: &Ingredient, wanted: Mass, size: EggSize) -> Option<Vec<EggChoice>> {
    let one = eggs::one(ingredient, size)?;
    let count = wanted / one;
    if !count.is_finite() || count <= 0.0 || count > 1e6 {
        return Some(Vec::new());
    }
    let whole = |eggs: u32| {
        let used = one * f64::from(eggs);
        EggChoice { eggs, used, off: Fraction::ratio(used / wanted - 1.0), left: Mass::ZERO }
    };
    let (below, above) = (count.floor() as u32, (count - 1e-9).ceil() as u32);
    let mut choices: Vec<EggChoice> = [below, above].into_iter().filter(|eggs| *eggs > 0).map(whole).collect();
    choices.dedup();
    let beaten = EggChoice { eggs: above, used: wanted, off: Fraction::ZERO, left: one * f64::from(above) - wanted };
    if beaten.left > Mass::ZERO {
        choices.push(beaten);
    }
    Some(choices)
}
