//! How much soda an acid of known formula neutralises.

use super::SODA_MOLAR_MASS;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "leaven::neutralising",
    source: "iupac-atomic-weights",
    place: "stoichiometry; the value's definition: bakers' dictionary, neutralizing value",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "n", unit: "mol/mol", from: 1.0, to: 3.0 },
        Valid { symbol: "M", unit: "g/mol", from: 50.0, to: 500.0 },
    ],
};

/// Returns the neutralising value of an acid: soda neutralised by 100 of acid, as a share.
///
/// ```text
/// NV = n · 84.007 / M
/// ```
///
/// | symbol | meaning                                | unit    |
/// |--------|----------------------------------------|---------|
/// | `NV`   | mass of soda by mass of acid           | –       |
/// | `n`    | protons that react with soda           | mol/mol |
/// | `M`    | molar mass of the acid                 | g/mol   |
///
/// Valid for acids that react completely; phosphates and slow acids keep to the trade's figures instead.
///
/// ```
/// let tartar = science::leaven::neutralising::value(1.0, 188.18);
/// assert_eq!(format!("{:.1}", tartar.as_percent()), "44.6");
/// ```
#[must_use]
pub fn value(protons: f64, molar_mass: f64) -> Fraction {
    Fraction::ratio(protons * SODA_MOLAR_MASS / molar_mass)
}

/// Returns the soda that an amount of acid neutralises.
///
/// ```
/// # use quantity::{Fraction, Mass};
/// let soda = science::leaven::neutralising::soda_for(Mass::grams(10.0), Fraction::percent(45.0));
/// assert_eq!(soda, Mass::grams(4.5));
/// ```
#[must_use]
pub fn soda_for(acid: Mass, value: Fraction) -> Mass {
    acid * value
}

/// Returns the acid that neutralises an amount of soda; infinite where the acid neutralises nothing.
///
/// ```
/// # use quantity::{Fraction, Mass};
/// let acid = science::leaven::neutralising::acid_for(Mass::grams(4.5), Fraction::percent(45.0));
/// assert_eq!(acid, Mass::grams(10.0));
/// ```
#[must_use]
pub fn acid_for(soda: Mass, value: Fraction) -> Mass {
    soda / value.as_ratio()
}
