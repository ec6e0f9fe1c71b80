//! Water activity of a sugar syrup by the old confectioner's rule.

use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::water_activity::money_born",
    source: "money-born-1951",
    place: "equilibrium humidity of sugar solutions",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "N", unit: "mol/100 g", from: 0.0, to: 1.0 }],
};

/// Returns the water activity of a sugar solution from its moles of sugar.
///
/// ```text
/// a_w = 1 / (1 + 0.27·N)
/// ```
///
/// | symbol | meaning                            | unit      |
/// |--------|------------------------------------|-----------|
/// | `a_w`  | water activity                     | –         |
/// | `N`    | moles of sugar in 100 g of water   | mol/100 g |
///
/// Valid for jams and syrups up to about 1 mol/100 g, within 0.02; a cross-check of Norrish's equation.
/// Money & Born (1951), from memory.
///
/// ```
/// let activity = science::keeping::water_activity::money_born::water_activity(150.0 / 342.3);
/// assert_eq!(format!("{:.4}", activity.as_ratio()), "0.8942");
/// ```
#[must_use]
pub fn water_activity(moles_in_100_grams_of_water: f64) -> Fraction {
    Fraction::ratio(1.0 / (1.0 + 0.27 * moles_in_100_grams_of_water))
}
