//! Water activity of a mixture from the activities of its parts, each in all the water.

use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::water_activity::ross",
    source: "ross-1975",
    place: "product rule for intermediate-moisture foods",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "a_i", unit: "–", from: 0.65, to: 1.0 }],
};

/// Returns the product of the parts' water activities, an upper estimate for the mixture.
///
/// ```text
/// a_w = Π a_i
/// ```
///
/// | symbol | meaning                                            | unit |
/// |--------|----------------------------------------------------|------|
/// | `a_w`  | water activity of the mixture                      | –    |
/// | `a_i`  | water activity of one part alone in all the water  | –    |
///
/// Valid above about 0.65, usually within 0.01, slightly high; nothing dissolved gives 1. Ross (1975).
///
/// ```
/// # use quantity::Fraction;
/// let parts = [Fraction::ratio(0.9702), Fraction::ratio(0.9608)];
/// let activity = science::keeping::water_activity::ross::water_activity(&parts);
/// assert_eq!(format!("{:.4}", activity.as_ratio()), "0.9322");
/// ```
#[must_use]
pub fn water_activity(parts: &[Fraction]) -> Fraction {
    parts.iter().fold(Fraction::WHOLE, |all, part| all.of(*part))
}
