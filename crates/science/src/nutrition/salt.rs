//! Salt as a label counts it.

use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::salt",
    source: "eu-1169-2011",
    place: "Annex I, point 11",
    standing: Standing::Published,
    valid: &[Valid { symbol: "Na", unit: "g in 100 g", from: 0.0, to: 40.0 }],
};

const SALT_PER_SODIUM: f64 = 2.5;

/// Returns the salt equivalent of all sodium in a food, whatever it came from.
///
/// ```text
/// salt = 2.5 · Na
/// ```
///
/// | symbol | meaning | unit |
/// |--------|---------|------|
/// | `Na`   | sodium  | g    |
///
/// The law fixes 2.5; sodium chloride holds one gram of sodium in 2.5421 g. Linear everywhere.
/// Regulation (EU) No 1169/2011, Annex I.
///
/// ```
/// # use quantity::Mass;
/// let salt = science::nutrition::salt::from_sodium(Mass::grams(0.48));
/// assert_eq!(format!("{:.2} g", salt.as_grams()), "1.20 g");
/// ```
#[must_use]
pub fn from_sodium(sodium: Mass) -> Mass {
    sodium * SALT_PER_SODIUM
}

/// Returns the sodium of a declared salt: `Na = salt / 2.5`.
///
/// ```
/// # use quantity::Mass;
/// let sodium = science::nutrition::salt::to_sodium(Mass::grams(1.2));
/// assert_eq!(format!("{:.0} mg", sodium.as_milligrams()), "480 mg");
/// ```
#[must_use]
pub fn to_sodium(salt: Mass) -> Mass {
    salt / SALT_PER_SODIUM
}
