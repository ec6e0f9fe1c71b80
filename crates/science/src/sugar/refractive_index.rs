//! Refractive index of sugar syrup: what a refractometer sees.

use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::refractive_index",
    source: "crc-handbook-sucrose",
    place: "refractive index at 20 °C and 589 nm, polynomial fitted to the table within 0.00008",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "w", unit: "%", from: 0.0, to: 85.0 }],
};

const COEFFICIENTS: [f64; 5] = [1.332_969, 0.143_662, 0.048_061_6, 0.031_368, -0.010_173_8];
const INVERSE: [f64; 5] = [0.016_997, 697.6454, -1751.401, 4208.645, -4734.52];

fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, coefficient| sum * x + coefficient)
}

/// Returns the refractive index of a sucrose solution at 20 °C for yellow light of 589 nm.
///
/// ```text
/// n = 1.332969 + 0.143662·w + 0.0480616·w² + 0.031368·w³ − 0.0101738·w⁴
/// ```
///
/// | symbol | meaning          | unit |
/// |--------|------------------|------|
/// | `n`    | refractive index | –    |
/// | `w`    | sucrose by mass  | –    |
///
/// Valid for 0 to 85 %, within 0.0001 of the handbook's table; the polynomial goes on outside.
///
/// ```
/// # use quantity::Fraction;
/// let n = science::sugar::refractive_index::refractive_index(Fraction::percent(50.0));
/// assert_eq!(format!("{n:.4}"), "1.4201");
/// ```
#[must_use]
pub fn refractive_index(sucrose: Fraction) -> f64 {
    polynomial(&COEFFICIENTS, sucrose.as_ratio())
}

/// Returns the share of sucrose that a refractive index at 20 °C stands for, within 0.05 points.
///
/// ```
/// let share = science::sugar::refractive_index::sucrose(1.4201);
/// assert_eq!(format!("{:.1} %", share.as_percent()), "50.0 %");
/// ```
#[must_use]
pub fn sucrose(refractive_index: f64) -> Fraction {
    Fraction::percent(polynomial(&INVERSE, refractive_index - 1.333))
}
