//! What a scale with digital steps can tell of a mass.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "measure::scale",
    source: "jcgm-100-2008",
    place: "4.3.7, F.2.2.1, 5.1.2, 6.2.1",
    standing: Standing::Published,
    valid: &[Valid { symbol: "d", unit: "g", from: 0.0, to: 1000.0 }],
};

/// Above this relative uncertainty an amount is too small for its scale. Common practice, no source.
pub const TOO_SMALL_FOR_THE_SCALE: Fraction = Fraction::percent(2.0);

/// Returns the standard uncertainty of one reading: every mass within half a step reads the same.
///
/// ```text
/// u = d / (2·√3)
/// ```
///
/// | symbol | meaning                         | unit |
/// |--------|---------------------------------|------|
/// | `u`    | standard uncertainty            | g    |
/// | `d`    | the step of the scale's display | g    |
///
/// Valid for any step; a step below zero gives an uncertainty below zero. JCGM 100:2008 (GUM), F.2.2.1.
///
/// ```
/// # use quantity::Mass;
/// let u = science::measure::scale::reading(Mass::grams(1.0));
/// assert_eq!(format!("{:.4} g", u.as_grams()), "0.2887 g");
/// ```
#[must_use]
pub fn reading(step: Mass) -> Mass {
    step / (2.0 * libm::sqrt(3.0))
}

/// Returns the standard uncertainty of a weighing: the tare and the reading, `u = √2 · d/(2·√3)`.
///
/// ```
/// # use quantity::Mass;
/// let u = science::measure::scale::weighing(Mass::grams(1.0));
/// assert_eq!(format!("{:.3} g", u.as_grams()), "0.408 g");
/// ```
#[must_use]
pub fn weighing(step: Mass) -> Mass {
    reading(step) * libm::sqrt(2.0)
}

/// Returns the standard uncertainty of a sum of independent weighings, `u = √(Σ uᵢ²)`.
///
/// ```
/// # use quantity::Mass;
/// let u = science::measure::scale::total(&[science::measure::scale::reading(Mass::grams(1.0)); 6]);
/// assert_eq!(format!("{:.3} g", u.as_grams()), "0.707 g");
/// ```
#[must_use]
pub fn total(uncertainties: &[Mass]) -> Mass {
    Mass::grams(libm::sqrt(uncertainties.iter().map(|u| u.as_grams() * u.as_grams()).sum()))
}

/// Returns the standard uncertainty of one reading as a share of the amount; infinite for no amount.
///
/// ```
/// # use quantity::Mass;
/// let share = science::measure::scale::relative(Mass::grams(1.0), Mass::grams(5.0));
/// assert_eq!(format!("{:.2} %", share.as_percent()), "5.77 %");
/// ```
#[must_use]
pub fn relative(step: Mass, amount: Mass) -> Fraction {
    Fraction::ratio(reading(step) / amount)
}

/// Returns the relative uncertainty of a product or quotient of independent figures, `√(Σ (uᵢ/xᵢ)²)`.
///
/// ```
/// # use quantity::Fraction;
/// let share = science::measure::scale::quotient(&[Fraction::percent(3.0), Fraction::percent(4.0)]);
/// assert_eq!(format!("{:.1} %", share.as_percent()), "5.0 %");
/// ```
#[must_use]
pub fn quotient(relatives: &[Fraction]) -> Fraction {
    Fraction::ratio(libm::sqrt(relatives.iter().map(|u| u.as_ratio() * u.as_ratio()).sum()))
}

/// Returns the expanded uncertainty with coverage factor 2, about 95 %: `U = 2·u`.
///
/// ```
/// # use quantity::Mass;
/// assert_eq!(science::measure::scale::expanded(Mass::grams(0.5)), Mass::grams(1.0));
/// ```
#[must_use]
pub fn expanded(standard: Mass) -> Mass {
    standard * 2.0
}
