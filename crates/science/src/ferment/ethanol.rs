//! How the ethanol that yeast makes slows it.

use crate::{Equation, Standing, Valid};
use quantity::{Amount, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::ethanol",
    source: "trade",
    place: "linear slowing to a stop near 95 g a kg water; no effect was seen below 11 g/kg in PubMed 18546405",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "C", unit: "mol/kg flour", from: 0.0, to: 1.3 }],
};

/// Returns the mass of ethanol that comes with an amount of carbon dioxide, mole for mole.
///
/// ```
/// # use quantity::Amount;
/// # use science::ferment::ethanol;
/// assert_eq!(format!("{:.1} g", ethanol(Amount::moles(0.695)).as_grams()), "32.0 g");
/// ```
#[must_use]
pub fn ethanol(gas_made: Amount) -> Mass {
    Mass::grams(46.07 * gas_made.as_moles())
}

/// Returns the share of its rate that yeast keeps beside that much ethanol.
///
/// ```text
/// g = 1 − 46.07·C / (E_x·W), never below 0
/// ```
///
/// | symbol  | meaning                               | value | unit  |
/// |---------|---------------------------------------|-------|-------|
/// | `g`     | share of the rate kept                |       | –     |
/// | `C`     | carbon dioxide made, as much ethanol  |       | mol   |
/// | `E_x`   | ethanol a kg water at which all stops | 95    | g/kg  |
/// | `W`     | all water                             |       | kg    |
/// | `46.07` | molar mass of ethanol                 |       | g/mol |
///
/// Valid for all a flour's sugars can give. From memory.
///
/// ```
/// # use quantity::{Amount, Mass};
/// # use science::ferment::ethanol_share;
/// assert_eq!(ethanol_share(Amount::ZERO, Mass::kilograms(0.79), 95.0), 1.0);
/// ```
#[must_use]
pub fn ethanol_share(gas_made: Amount, water: Mass, limit: f64) -> f64 {
    (1.0 - ethanol(gas_made).as_grams() / (limit * water.as_kilograms())).max(0.0)
}
