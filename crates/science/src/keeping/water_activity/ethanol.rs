//! Water activity of alcohol in water.

use super::WATER_MOLAR_MASS;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::water_activity::ethanol",
    source: "raoult-1887",
    place: "ideal solution",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "water", unit: "g", from: 0.001, to: 1.0e7 },
        Valid { symbol: "ethanol in both", unit: "%", from: 0.0, to: 20.0 },
    ],
};

const ETHANOL_MOLAR_MASS: f64 = 46.069;

/// Returns the water activity of ethanol in water, taken as an ideal solution.
///
/// ```text
/// a_w = n_w / (n_w + n_e)
/// ```
///
/// | symbol | meaning          | unit |
/// |--------|------------------|------|
/// | `n_w`  | moles of water   | mol  |
/// | `n_e`  | moles of ethanol | mol  |
///
/// Good to about 10 % by mass; stronger spirits are less ideal and their water is freer than this says, by 0.004 at
/// 10 % and 0.017 at 20 %: there it errs to the unsafe side.
///
/// ```
/// # use quantity::Mass;
/// let wine = science::keeping::water_activity::ethanol::water_activity(Mass::grams(90.0), Mass::grams(10.0));
/// assert_eq!(format!("{:.3}", wine.as_ratio()), "0.958");
/// ```
#[must_use]
pub fn water_activity(water: Mass, ethanol: Mass) -> Fraction {
    let water = water.as_grams() / WATER_MOLAR_MASS;
    Fraction::ratio(water / (water + ethanol.as_grams() / ETHANOL_MOLAR_MASS))
}
