//! Where added water stands in a list of ingredients.

use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::added_water",
    source: "eu-1169-2011",
    place: "Annex VII, Part A, point 1",
    standing: Standing::Published,
    valid: &[Valid { symbol: "M", unit: "g", from: 0.0, to: 1.0e7 }, Valid { symbol: "m", unit: "g", from: 0.0, to: 1.0e7 }],
};

/// Up to this share of the finished food, added water may be left out of the list.
pub const MAY_BE_LEFT_OUT: quantity::Fraction = quantity::Fraction::percent(5.0);

/// Returns the water to list: what the finished food weighs beyond all other ingredients put in.
///
/// ```text
/// water = max(0, M − m)
/// ```
///
/// | symbol | meaning                        | unit |
/// |--------|--------------------------------|------|
/// | `M`    | mass of the finished food      | g    |
/// | `m`    | all other ingredients together | g    |
///
/// Valid for any masses; where the food weighs less than what went in, no water is listed.
/// Regulation (EU) No 1169/2011, Annex VII, Part A.
///
/// ```
/// # use quantity::Mass;
/// let water = science::nutrition::added_water::to_list(Mass::grams(1482.0), Mass::grams(1035.0));
/// assert_eq!(water, Mass::grams(447.0));
/// ```
#[must_use]
pub fn to_list(finished: Mass, others: Mass) -> Mass {
    (finished - others).max(Mass::ZERO)
}
