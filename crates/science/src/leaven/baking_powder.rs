//! Carbon dioxide from baking powder.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "leaven::baking_powder",
    source: "canada-food-drug-regulations",
    place: "B.03.002: not less than 10 % carbon dioxide",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.0, to: 100_000.0 }, Valid { symbol: "c", unit: "%", from: 8.0, to: 17.0 }],
};

/// The least share of gas a baking powder must give by Canadian law.
pub const LEAST_GAS: Fraction = Fraction::percent(10.0);
/// What a double-acting powder of the American trade gives when made; from memory.
pub const USUAL_GAS: Fraction = Fraction::percent(12.0);

/// Returns the carbon dioxide that baking powder gives: `m · c`.
///
/// ```text
/// m_CO₂ = c · m
/// ```
///
/// | symbol  | meaning                     | unit |
/// |---------|-----------------------------|------|
/// | `m_CO₂` | carbon dioxide              | g    |
/// | `m`     | baking powder               | g    |
/// | `c`     | its available carbon dioxide | –   |
///
/// Linear everywhere; old powder gives less.
///
/// ```
/// # use quantity::Mass;
/// use science::leaven::baking_powder::{LEAST_GAS, carbon_dioxide};
/// assert_eq!(carbon_dioxide(Mass::grams(10.0), LEAST_GAS), Mass::grams(1.0));
/// ```
#[must_use]
pub fn carbon_dioxide(powder: Mass, available: Fraction) -> Mass {
    powder * available
}
