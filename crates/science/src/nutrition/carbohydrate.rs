//! Carbohydrate with fibre, without it, and by difference.

use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::carbohydrate",
    source: "eu-1169-2011",
    place: "Annex I, definitions; by difference: FAO Food and Nutrition Paper 77, ch. 2.3",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g in 100 g", from: 0.0, to: 100.0 }],
};

/// What 100 g of a food holds beside carbohydrate.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Beside {
    /// Water.
    pub water: Mass,
    /// Protein.
    pub protein: Mass,
    /// Fat.
    pub fat: Mass,
    /// Ash.
    pub ash: Mass,
    /// Ethanol.
    pub alcohol: Mass,
}

/// Returns total carbohydrate by difference, fibre included.
///
/// ```text
/// C = m − water − protein − fat − ash − alcohol
/// ```
///
/// | symbol | meaning                      | unit |
/// |--------|------------------------------|------|
/// | `C`    | carbohydrate including fibre | g    |
/// | `m`    | the food                     | g    |
///
/// Valid where the parts do not exceed the food; outside, the result is below zero and says so.
///
/// ```
/// # use quantity::Mass;
/// use science::nutrition::carbohydrate::{Beside, by_difference};
/// let g = Mass::grams;
/// let flour = Beside { water: g(12.0), protein: g(10.0), fat: g(1.0), ash: g(0.5), ..Beside::default() };
/// assert_eq!(by_difference(g(100.0), &flour), g(76.5));
/// ```
#[must_use]
pub fn by_difference(food: Mass, beside: &Beside) -> Mass {
    food - beside.water - beside.protein - beside.fat - beside.ash - beside.alcohol
}

/// Returns carbohydrate in the European sense from total carbohydrate: `C − fibre`.
///
/// A table that gives carbohydrate by difference includes fibre; counting it as European carbohydrate
/// would charge each gram of fibre 17 + 8 kJ instead of 8.
///
/// ```
/// # use quantity::Mass;
/// let european = science::nutrition::carbohydrate::without_fibre(Mass::grams(76.5), Mass::grams(2.5));
/// assert_eq!(european, Mass::grams(74.0));
/// ```
#[must_use]
pub fn without_fibre(total: Mass, fibre: Mass) -> Mass {
    total - fibre
}

/// Returns total carbohydrate in the American sense from the European: `C + fibre`.
///
/// ```
/// # use quantity::Mass;
/// let total = science::nutrition::carbohydrate::with_fibre(Mass::grams(74.0), Mass::grams(2.5));
/// assert_eq!(total, Mass::grams(76.5));
/// ```
#[must_use]
pub fn with_fibre(european: Mass, fibre: Mass) -> Mass {
    european + fibre
}
