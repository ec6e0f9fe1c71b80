//! How likely a panel finds a difference, and how many tasters that takes.

use super::forced_choice::{Test, at_least, fewest};
use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::panel_size",
    source: "iso-4120-2021",
    place: "Table A.3, number of assessors; recomputed by the exact binomial",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "n", unit: "answers", from: 6.0, to: 2000.0 },
        Valid { symbol: "p_d", unit: "%", from: 10.0, to: 50.0 },
        Valid { symbol: "α", unit: "%", from: 0.1, to: 20.0 },
    ],
};

/// Panels are tried up to this size.
const LARGEST_PANEL: u32 = 2000;

/// Returns the chance that a panel finds a difference which a share of people tell.
///
/// ```text
/// power = P(X ≥ x_crit),   X binomial with n and p_d + (1 − p_d)·g
/// ```
///
/// | symbol   | meaning                                | unit |
/// |----------|----------------------------------------|------|
/// | `x_crit` | fewest right answers that are significant | – |
/// | `p_d`    | share of people who tell the difference | –   |
///
/// Where no result is significant the power is 0. It is saw-toothed in the panel's size. ISO 4120.
///
/// ```
/// # use quantity::Fraction;
/// use science::sensory::{forced_choice::Test, panel_size::power};
/// let found = power(Test::Triangle, 12, Fraction::percent(50.0), Fraction::percent(5.0));
/// assert_eq!(format!("{:.3}", found.as_ratio()), "0.632");
/// ```
#[must_use]
pub fn power(test: Test, answers: u32, discriminators: Fraction, significance: Fraction) -> Fraction {
    let correct = discriminators.as_ratio() + discriminators.left().as_ratio() * test.guess();
    Fraction::ratio(fewest(test, answers, significance).map_or(0.0, |right| at_least(right, answers, correct)))
}

/// Returns the smallest panel whose test reaches the power, or none up to two thousand tasters.
///
/// ```
/// # use quantity::Fraction;
/// use science::sensory::{forced_choice::Test, panel_size::smallest};
/// let percent = Fraction::percent;
/// assert_eq!(smallest(Test::Triangle, percent(30.0), percent(5.0), percent(95.0)), Some(66));
/// ```
#[must_use]
pub fn smallest(test: Test, discriminators: Fraction, significance: Fraction, wanted: Fraction) -> Option<u32> {
    (1..=LARGEST_PANEL).find(|answers| power(test, *answers, discriminators, significance) >= wanted)
}
