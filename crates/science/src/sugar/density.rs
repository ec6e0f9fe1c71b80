//! Density of sugar syrup at 20 °C.

use super::where_reached;
use crate::{Equation, Standing, Valid};
use quantity::{Density, Fraction};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::density",
    source: "icumsa-sps-4",
    place: "polynomial at 20 °C, from memory; within 0.03 % of the handbook's table",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "w", unit: "%", from: 0.0, to: 84.0 }],
};

const COEFFICIENTS: [f64; 7] = [998.2012, 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890];

/// Returns the density of a sucrose solution at 20 °C.
///
/// ```text
/// ρ = 998.2012 + 385.1761·w + 135.3705·w² + 40.9299·w³ − 3.9643·w⁴ + 13.4853·w⁵ − 17.2890·w⁶
/// ```
///
/// | symbol | meaning         | unit  |
/// |--------|-----------------|-------|
/// | `ρ`    | density         | kg/m³ |
/// | `w`    | sucrose by mass | –     |
///
/// Valid for 0 to 84 %, within 0.05 %; the polynomial goes on outside. ICUMSA SPS-4.
///
/// ```
/// # use quantity::Fraction;
/// let syrup = science::sugar::density::density(Fraction::percent(60.0));
/// assert_eq!(format!("{:.1} kg/m³", syrup.as_kilograms_per_cubic_metre()), "1286.6 kg/m³");
/// ```
#[must_use]
pub fn density(sucrose: Fraction) -> Density {
    let w = sucrose.as_ratio();
    let value = COEFFICIENTS.iter().rev().fold(0.0, |sum, coefficient| sum * w + coefficient);
    Density::kilograms_per_cubic_metre(value)
}

/// Returns the share of sucrose that gives a density at 20 °C, between 0 and 100 %.
///
/// ```
/// # use quantity::Density;
/// let share = science::sugar::density::sucrose(Density::kilograms_per_cubic_metre(1286.61));
/// assert_eq!(format!("{:.2} %", share.as_percent()), "60.00 %");
/// ```
#[must_use]
pub fn sucrose(syrup: Density) -> Fraction {
    Fraction::ratio(where_reached(syrup.as_grams_per_millilitre(), (0.0, 1.0), |w| {
        density(Fraction::ratio(w)).as_grams_per_millilitre()
    }))
}
