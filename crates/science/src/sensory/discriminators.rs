//! How many of a panel really tell the difference, guesses taken off.

use super::forced_choice::Test;
use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction};
use statrs::distribution::{Beta, ContinuousCDF, Normal};

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

fn beta_quantile(a: f64, b: f64, share: f64) -> f64 {
    match Beta::new(a, b) {
        Ok(beta) if (0.0..=1.0).contains(&share) => beta.inverse_cdf(share),
        _ => f64::NAN,
    }
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
    let (x, n, guess) = (f64::from(right), f64::from(answers), test.guess());
    let without_guesses = |correct: f64| Fraction::ratio((correct - guess) / (1.0 - guess));
    let correct = x / n;
    let share = without_guesses(correct);
    let error = Fraction::ratio((correct * (1.0 - correct) / n).sqrt() / (1.0 - guess));
    let reach = error * normal_quantile(confidence.as_ratio());
    let lowest = if right == 0 { 0.0 } else { beta_quantile(x, n - x + 1.0, 1.0 - confidence.as_ratio()) };
    let highest = if right >= answers { 1.0 } else { beta_quantile(x + 1.0, n - x, confidence.as_ratio()) };
    Discriminators {
        share,
        error,
        limits: Between { from: share - reach, to: share + reach },
        exact: Between { from: without_guesses(lowest), to: without_guesses(highest) },
    }
}
