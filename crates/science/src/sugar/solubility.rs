//! How much sugar water holds before it crystallises.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::solubility",
    source: "mohos-2010",
    place: "Tables A2.2 and A2.3, polynomial fitted within 0.003 points",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.0, to: 100.0 }],
};

const TABLE_FIT: [f64; 4] = [64.1796, 0.134_815, 5.311_19e-4, -3.885e-9];
const VAVRINECZ: [f64; 4] = [64.397, 0.072_51, 2.056_9e-3, -9.035e-6];

fn polynomial(coefficients: [f64; 4], t: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, coefficient| sum * t + coefficient)
}

/// Returns the share of sucrose in a saturated solution.
///
/// ```text
/// w = 64.1796 + 0.134815·T + 5.31119e-4·T² − 3.885e-9·T³
/// ```
///
/// | symbol | meaning         | unit |
/// |--------|-----------------|------|
/// | `w`    | sucrose by mass | %    |
/// | `T`    | temperature     | °C   |
///
/// Valid for 0 to 100 °C; sources differ by half a point, so show ±0.5. The polynomial goes on outside.
/// Mohos (2010), Appendix 2.
///
/// ```
/// # use quantity::Temperature;
/// let saturated = science::sugar::solubility::saturated(Temperature::celsius(20.0));
/// assert_eq!(format!("{:.1} %", saturated.as_percent()), "67.1 %");
/// ```
#[must_use]
pub fn saturated(at: Temperature) -> Fraction {
    Fraction::percent(polynomial(TABLE_FIT, at.as_celsius()))
}

/// Returns the same by Vavrinecz's equation, which lies half a point lower at 20 °C.
///
/// `w = 64.397 + 0.07251·T + 2.0569e-3·T² − 9.035e-6·T³`, from memory.
///
/// ```
/// # use quantity::Temperature;
/// let saturated = science::sugar::solubility::saturated_vavrinecz(Temperature::celsius(20.0));
/// assert_eq!(format!("{:.1} %", saturated.as_percent()), "66.6 %");
/// ```
#[must_use]
pub fn saturated_vavrinecz(at: Temperature) -> Fraction {
    Fraction::percent(polynomial(VAVRINECZ, at.as_celsius()))
}

/// Returns how much of a mass of sugar dissolves in water: all of it, or as much as saturates it.
///
/// ```
/// # use quantity::{Mass, Temperature};
/// let grams = Mass::grams;
/// let dissolved = science::sugar::solubility::dissolved(grams(200.0), grams(77.9), Temperature::celsius(20.0));
/// assert_eq!(format!("{:.0} g", dissolved.as_grams()), "159 g");
/// ```
#[must_use]
pub fn dissolved(sucrose: Mass, water: Mass, at: Temperature) -> Mass {
    let share = saturated(at);
    sucrose.min(water * (share.as_ratio() / share.left().as_ratio()))
}
