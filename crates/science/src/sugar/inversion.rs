//! Sucrose split into glucose and fructose by acid or an enzyme.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::inversion",
    source: "iupac-atomic-weights",
    place: "stoichiometry of C₁₂H₂₂O₁₁ + H₂O → 2 C₆H₁₂O₆",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.0, to: 1.0e6 }, Valid { symbol: "x", unit: "%", from: 0.0, to: 100.0 }],
};

/// Molar masses of sucrose and of a hexose, g/mol.
const SUCROSE: f64 = 342.297;
const HEXOSE: f64 = 180.156;

/// What inversion leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inverted {
    /// Sucrose that is left.
    pub sucrose: Mass,
    /// Glucose that came of it.
    pub glucose: Mass,
    /// Fructose that came of it.
    pub fructose: Mass,
    /// Water bound into the sugars.
    pub water_bound: Mass,
}

/// Returns what a mass of sucrose becomes when a share of it is inverted.
///
/// ```text
/// m_glucose = m_fructose = m·x·180.156/342.297      water bound = m·x·18.015/342.297
/// ```
///
/// | symbol | meaning               | unit |
/// |--------|-----------------------|------|
/// | `m`    | sucrose               | g    |
/// | `x`    | share that is inverted | –   |
///
/// One gram of sucrose gives 1.0526 g of invert sugar. Exact. How fast acid inverts is not foreseen here.
///
/// ```
/// # use quantity::{Fraction, Mass};
/// let all = science::sugar::inversion::inverted(Mass::grams(1.0), Fraction::WHOLE);
/// assert_eq!(format!("{:.4} g", (all.glucose + all.fructose).as_grams()), "1.0526 g");
/// ```
#[must_use]
pub fn inverted(sucrose: Mass, share: Fraction) -> Inverted {
    let split = sucrose * share;
    let each = split * (HEXOSE / SUCROSE);
    Inverted { sucrose: sucrose - split, glucose: each, fructose: each, water_bound: each * 2.0 - split }
}
