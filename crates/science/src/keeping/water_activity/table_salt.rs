//! Water activity of salt in water.

use super::WATER_MOLAR_MASS;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::water_activity::table_salt",
    source: "pitzer-mayorga-1973",
    place: "Table I, NaCl at 25 °C",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "salt", unit: "g", from: 0.0, to: 1.0e7 },
        Valid { symbol: "m", unit: "mol/kg", from: 0.0, to: 6.15 },
    ],
};

/// Molar mass of sodium chloride, g/mol.
const SALT_MOLAR_MASS: f64 = 58.443;
/// Debye-Hückel slope of the osmotic coefficient at 25 °C.
const SLOPE: f64 = 0.3915;
const BETA_0: f64 = 0.0765;
const BETA_1: f64 = 0.2664;
const C_PHI: f64 = 0.00127;

/// Returns the water activity of a brine at 25 °C.
///
/// ```text
/// ln a_w = −2·m·φ·0.018015
/// φ = 1 − A·√m/(1 + 1.2·√m) + m·(β₀ + β₁·exp(−2·√m)) + m²·C
/// ```
///
/// | symbol | meaning                     | value   | unit   |
/// |--------|-----------------------------|---------|--------|
/// | `m`    | molality of salt            |         | mol/kg |
/// | `φ`    | osmotic coefficient         |         | –      |
/// | `A`    | Debye-Hückel slope          | 0.3915  | –      |
/// | `β₀`   | Pitzer parameter            | 0.0765  | –      |
/// | `β₁`   | Pitzer parameter            | 0.2664  | –      |
/// | `C`    | Pitzer parameter            | 0.00127 | –      |
///
/// Valid to saturation, 6.15 mol/kg, within 0.001; above, the excess salt lies undissolved and the figure
/// comes out too low. Pitzer & Mayorga (1973), parameters from memory.
///
/// ```
/// # use quantity::Mass;
/// let brine = science::keeping::water_activity::table_salt::water_activity(Mass::kilograms(1.0), Mass::grams(58.443));
/// assert_eq!(format!("{:.3}", brine.as_ratio()), "0.967");
/// ```
#[must_use]
pub fn water_activity(water: Mass, salt: Mass) -> Fraction {
    let molality = salt.as_grams() / SALT_MOLAR_MASS / water.as_kilograms();
    let root = molality.max(0.0).sqrt();
    let short_range = molality * (BETA_0 + BETA_1 * libm::exp(-2.0 * root)) + molality * molality * C_PHI;
    let osmotic = 1.0 - SLOPE * root / (1.0 + 1.2 * root) + short_range;
    Fraction::ratio(libm::exp(-2.0 * molality * osmotic * WATER_MOLAR_MASS / 1000.0))
}
