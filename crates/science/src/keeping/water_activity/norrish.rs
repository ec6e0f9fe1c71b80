//! Water activity of sugars, glycerol and polyols in water, one or several.

use super::{WATER_MOLAR_MASS, solute::Dissolved};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::water_activity::norrish",
    source: "norrish-1966",
    place: "equation for one and for several solutes",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "water", unit: "g", from: 0.001, to: 1.0e7 },
        Valid { symbol: "solutes in the solution", unit: "%", from: 0.0, to: 75.0 },
    ],
};

/// Returns the water activity of a solution.
///
/// ```text
/// a_w = x_w · exp(−(Σ √K_i · x_i)²)
/// ```
///
/// | symbol | meaning                        | unit    |
/// |--------|--------------------------------|---------|
/// | `a_w`  | water activity                 | –       |
/// | `x_w`  | moles of water among all moles | mol/mol |
/// | `x_i`  | moles of a solute among all    | mol/mol |
/// | `K_i`  | the solute's constant          | –       |
///
/// Valid to about 75 % of solutes by mass, within 0.01; above, it comes out too low. Without any water it
/// gives zero. Norrish (1966); constants with their sources in `data/solutes.toml`.
///
/// ```
/// # use quantity::Mass;
/// use science::keeping::water_activity::{norrish, solute::{Dissolved, named}};
/// let sugar = Dissolved { solute: named("sucrose").expect("known"), mass: Mass::grams(60.0) };
/// let activity = norrish::water_activity(Mass::grams(40.0), &[sugar]);
/// assert_eq!(format!("{:.4}", activity.as_ratio()), "0.8953");
/// ```
#[must_use]
pub fn water_activity(water: Mass, solutes: &[Dissolved]) -> Fraction {
    let water = water.as_grams() / WATER_MOLAR_MASS;
    let (mut moles, mut rooted) = (0.0, 0.0);
    for Dissolved { solute, mass } in solutes {
        let dissolved = mass.as_grams() / solute.molar_mass;
        moles += dissolved;
        rooted += solute.norrish_root * dissolved;
    }
    let all = water + moles;
    let exponent = rooted / all;
    Fraction::ratio(water / all * libm::exp(-exponent * exponent))
}
