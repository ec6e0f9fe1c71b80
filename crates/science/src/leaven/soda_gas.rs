//! Carbon dioxide from baking soda.

use super::{CARBON_DIOXIDE_MOLAR_MASS, SODA_MOLAR_MASS};
use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "leaven::soda_gas",
    source: "iupac-atomic-weights",
    place: "stoichiometry of NaHCO₃",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.0, to: 100_000.0 }],
};

/// What drives the gas out of the soda.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Driver {
    /// Enough acid: every mole of soda gives a mole of gas.
    Acid,
    /// Heat alone: two moles of soda give one mole of gas and leave washing soda, which tastes of it.
    Heat,
}

/// Returns the carbon dioxide that soda gives.
///
/// ```text
/// with acid:  NaHCO₃ + H⁺ → Na⁺ + H₂O + CO₂      m_CO₂ = m · 44.010/84.007
/// heat alone: 2 NaHCO₃ → Na₂CO₃ + H₂O + CO₂      half of that
/// ```
///
/// | symbol  | meaning                 | unit |
/// |---------|-------------------------|------|
/// | `m`     | sodium hydrogen carbonate | g  |
/// | `m_CO₂` | carbon dioxide          | g    |
///
/// Valid for any mass; complete reaction, so an upper limit. Stoichiometry.
///
/// ```
/// # use quantity::Mass;
/// use science::leaven::soda_gas::{Driver, carbon_dioxide};
/// let gas = carbon_dioxide(Mass::grams(1.0), Driver::Acid);
/// assert_eq!(format!("{:.4} g", gas.as_grams()), "0.5239 g");
/// ```
#[must_use]
pub fn carbon_dioxide(soda: Mass, driver: Driver) -> Mass {
    let moles_of_gas = match driver {
        Driver::Acid => 1.0,
        Driver::Heat => 0.5,
    };
    soda * (moles_of_gas * CARBON_DIOXIDE_MOLAR_MASS / SODA_MOLAR_MASS)
}
