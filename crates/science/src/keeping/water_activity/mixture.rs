//! Water activity of a filling, spread or syrup: sugars, salt and alcohol in the same water.

use super::{ethanol, norrish, ross, solute::Dissolved, table_salt};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::water_activity::mixture",
    source: "ross-1975",
    place: "product of Norrish's equation for the sugars, brine and ideal alcohol",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "a_w", unit: "–", from: 0.65, to: 1.0 }],
};

/// What is dissolved in the water of a food. Sugar beyond saturation lies as crystals: leave it out.
#[derive(Clone, Copy, Debug)]
pub struct Mixture<'a> {
    /// The water.
    pub water: Mass,
    /// Sugars, glycerol, polyols.
    pub solutes: &'a [Dissolved<'a>],
    /// Salt.
    pub salt: Mass,
    /// Ethanol.
    pub ethanol: Mass,
}

/// Returns the water activity of a mixture, an upper estimate.
///
/// ```text
/// a_w = a_sugars · a_salt · a_ethanol
/// ```
///
/// | symbol      | meaning                                              | unit |
/// |-------------|------------------------------------------------------|------|
/// | `a_sugars`  | of all sugars and polyols together, Norrish          | –    |
/// | `a_salt`    | of the salt alone in all the water, Pitzer           | –    |
/// | `a_ethanol` | of the alcohol alone in all the water, Raoult        | –    |
///
/// Valid above about 0.65, usually within 0.02. Fat holds no water and counts nothing; starch, protein and
/// pectin bind some, so a real dough or filling lies a little lower.
///
/// ```
/// # use quantity::Mass;
/// use science::keeping::water_activity::{mixture::{Mixture, water_activity}, solute::{Dissolved, named}};
/// let sugar = [Dissolved { solute: named("sucrose").expect("known"), mass: Mass::grams(158.9) }];
/// let spread = Mixture { water: Mass::grams(77.9), solutes: &sugar, salt: Mass::ZERO, ethanol: Mass::grams(18.94) };
/// assert_eq!(format!("{:.2}", water_activity(&spread).as_ratio()), "0.78");
/// ```
#[must_use]
pub fn water_activity(mixture: &Mixture) -> Fraction {
    ross::water_activity(&[
        norrish::water_activity(mixture.water, mixture.solutes),
        table_salt::water_activity(mixture.water, mixture.salt),
        ethanol::water_activity(mixture.water, mixture.ethanol),
    ])
}
