//! How many of a panel really tell the difference, guesses taken off.

use super::forced_choice::{Test, at_least};
use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction};
use statrs::distribution::{ContinuousCDF, Normal};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::discriminators",
    source: "iso-4120-2021",
    place: "Annex B, confidence limits on the proportion of discriminators",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "x", unit: "answers", from: 0.0, to: 2000.0 },
        Valid { symbol: "n", unit: "answers", from: 6.0, to: 2000.0 },
    ],
};

/// An estimate with its one-sided limits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Discriminators {
    /// The best estimate; below zero where fewer were right than by guessing. Show it as zero.
    pub share: Fraction,
    /// Its standard error.
    pub error: Fraction,
    /// The lower and upper one-sided limits by the normal approximation.
    pub limits: Between<Fraction>,
    /// The same by the exact method of Clopper and Pearson.
    pub exact: Between<Fraction>,
}

/// The standard normal quantile.
pub(super) fn normal_quantile(share: f64) -> f64 {
    match Normal::new(0.0, 1.0) {
        Ok(normal) if (0.0..=1.0).contains(&share) => normal.inverse_cdf(share),
        _ => f64::NAN,
    }
}

/// The share of discriminators in a share of right answers.
fn without_guesses(test: Test, correct: f64) -> Fraction {
    Fraction::ratio((correct - test.guess()) / (1.0 - test.guess()))
}

/// The share of discriminators and its standard error.
pub(super) fn estimate(test: Test, right: u32, answers: u32) -> (Fraction, Fraction) {
    let (correct, n) = (f64::from(right) / f64::from(answers), f64::from(answers));
    let error = (correct * (1.0 - correct) / n).sqrt() / (1.0 - test.guess());
    (without_guesses(test, correct), Fraction::ratio(error))
}

/// The share of right answers at which at least so many of a panel are right with a chance, by halving to 2⁻⁵⁰.
fn share_for(right: u32, answers: u32, chance: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..50 {
        let middle = f64::midpoint(low, high);
        if at_least(right, answers, middle) < chance {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

/// Returns the share of a panel that really tells the difference.
///
/// ```text
/// p_d = (x/n − g)/(1 − g)     SE = √(p_c·(1 − p_c)/n)/(1 − g)     limits p_d ± z·SE
/// ```
///
/// | symbol | meaning                        | unit |
/// |--------|--------------------------------|------|
/// | `p_d`  | share of discriminators        | –    |
/// | `p_c`  | share of right answers, `x/n`  | –    |
/// | `g`    | share of right guesses         | –    |
/// | `z`    | normal quantile of the confidence | – |
///
/// Valid for answers of different people. Without answers it is not a number. ISO 4120, Annex B.
///
/// ```
/// # use quantity::Fraction;
/// use science::sensory::{discriminators::discriminators, forced_choice::Test};
/// let panel = discriminators(Test::Triangle, 14, 30, Fraction::percent(95.0));
/// assert_eq!(format!("{:.3} ± {:.4}", panel.share.as_ratio(), panel.error.as_ratio()), "0.200 ± 0.1366");
/// ```
#[must_use]
pub fn discriminators(test: Test, right: u32, answers: u32, confidence: Fraction) -> Discriminators {
    let (share, error) = estimate(test, right, answers);
    let reach = error * normal_quantile(confidence.as_ratio());
    let lowest = if right == 0 { 0.0 } else { share_for(right, answers, confidence.left().as_ratio()) };
    let highest = if right >= answers { 1.0 } else { share_for(right + 1, answers, confidence.as_ratio()) };
    Discriminators {
        share,
        error,
        limits: Between { from: share - reach, to: share + reach },
        exact: Between { from: without_guesses(test, lowest), to: without_guesses(test, highest) },
    }
}
