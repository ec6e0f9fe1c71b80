//! How salt slows the bacteria of a sourdough.

use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::salt_on_bacteria",
    source: "brandt-2004",
    place: "no growth at 4 % salt on flour; the square is fitted",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "s", unit: "% of flour", from: 0.0, to: 4.0 }],
};

/// Returns the share of their rate that the bacteria keep.
///
/// ```text
/// g = 1 − (s / s_x)², never below 0
/// ```
///
/// | symbol | meaning                       | value | unit |
/// |--------|-------------------------------|-------|------|
/// | `g`    | share of the rate kept        |       | –    |
/// | `s`    | salt on flour                 |       | %    |
/// | `s_x`  | salt at which nothing grows   | 4     | %    |
///
/// Valid up to 4 %, zero above. Brandt, Hammes & Gänzle (2004) for the limit.
///
/// ```
/// # use quantity::Fraction;
/// # use science::ferment::salt_on_bacteria;
/// assert_eq!(salt_on_bacteria(Fraction::ratio(0.02), Fraction::ratio(0.04)), 0.75);
/// ```
#[must_use]
pub fn salt_on_bacteria(salt: Fraction, limit: Fraction) -> f64 {
    let share = salt.as_ratio() / limit.as_ratio();
    (1.0 - share * share).max(0.0)
}
