//! How concentrated the dough's water is, and how that slows yeast.

use crate::{Equation, Standing, Valid};
use quantity::{Amount, Mass, Osmolality};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::osmotic_strength",
    source: "physical-chemistry",
    place: "osmolality as the sum over solutes; osmotic coefficient of table salt 0.93",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "O", unit: "osmol/kg", from: 0.0, to: 6.5 }],
};

/// What is dissolved in the dough's water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Solutes {
    /// Table salt.
    pub salt: Mass,
    /// Sugars, each maltose counted as one.
    pub sugars: Amount,
    /// Whatever else, as particles.
    pub other: Amount,
}

/// Returns the osmolality of the dough's water.
///
/// ```text
/// O = (1.86·m_salt/58.44 + n_sugars + n_other) / m_water
/// ```
///
/// | symbol     | meaning                                | unit     |
/// |------------|----------------------------------------|----------|
/// | `O`        | osmolality                             | osmol/kg |
/// | `m_salt`   | salt                                   | g        |
/// | `n_sugars` | hexose, and half the hexose in maltose | mol      |
/// | `n_other`  | other particles                        | osmol    |
/// | `m_water`  | all water, the flour's own included    | kg       |
///
/// Valid up to 6.5 osmol/kg; above, sugars count more than ideally. Two ions to a salt, with an
/// osmotic coefficient of 0.93 (from memory).
///
/// ```
/// # use quantity::{Amount, Mass};
/// # use science::ferment::{Solutes, osmotic_strength};
/// // A dough of 65 % water with 2 % salt, flour sugars apart.
/// let solutes = Solutes { salt: Mass::grams(20.0), sugars: Amount::ZERO, other: Amount::ZERO };
/// let strength = osmotic_strength(&solutes, Mass::grams(790.0));
/// assert_eq!(format!("{:.3}", strength.as_osmoles_per_kilogram()), "0.806");
/// ```
#[must_use]
pub fn osmotic_strength(solutes: &Solutes, water: Mass) -> Osmolality {
    let particles = 1.86 * solutes.salt.as_grams() / 58.44 + solutes.sugars.as_moles() + solutes.other.as_moles();
    Osmolality::osmoles_per_kilogram(particles / water.as_kilograms())
}

/// The share of its rate that a yeast keeps: it falls in a line to nothing at its limit.
///
/// ```
/// # use quantity::Osmolality;
/// # use science::ferment::osmotic_share;
/// let limit = Osmolality::osmoles_per_kilogram(4.0);
/// assert_eq!(osmotic_share(Osmolality::osmoles_per_kilogram(1.0), limit), 0.75);
/// ```
#[must_use]
pub fn osmotic_share(strength: Osmolality, limit: Osmolality) -> f64 {
    (1.0 - strength / limit).max(0.0)
}
