//! How much tasters like it: the nine-point scale and its summary.

use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction};
use statrs::distribution::{ContinuousCDF, StudentsT};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::hedonic",
    source: "peryam-pilgrim-1957",
    place: "nine-point hedonic scale; paired test: Student 1908",
    standing: Standing::Published,
    valid: &[Valid { symbol: "score", unit: "–", from: 1.0, to: 9.0 }],
};

/// The words of the scale, from one to nine.
pub const WORDS: [&str; 9] = [
    "dislike extremely",
    "dislike very much",
    "dislike moderately",
    "dislike slightly",
    "neither like nor dislike",
    "like slightly",
    "like moderately",
    "like very much",
    "like extremely",
];

/// What a panel's scores say. The steps of the scale are not surely equal: show median and counts by the mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Summary {
    /// How many gave each score, from one to nine.
    pub counts: [u32; 9],
    /// Scores off the scale, which count nowhere else.
    pub off_scale: u32,
    /// The mean.
    pub mean: f64,
    /// The median.
    pub median: f64,
}

/// Returns the summary of scores from one to nine; without scores mean and median are not numbers.
///
/// ```
/// let summary = science::sensory::hedonic::summary(&[7, 8, 6, 9, 7]);
/// assert_eq!((summary.mean, summary.median), (7.4, 7.0));
/// ```
#[must_use]
pub fn summary(scores: &[u8]) -> Summary {
    let mut counts = [0; 9];
    let mut on_scale: Vec<u8> = scores.iter().copied().filter(|score| (1..=9).contains(score)).collect();
    on_scale.sort_unstable();
    for score in &on_scale {
        counts[usize::from(*score) - 1] += 1;
    }
    let n = on_scale.len();
    let at = |index: usize| on_scale.get(index).map_or(f64::NAN, |score| f64::from(*score));
    Summary {
        counts,
        off_scale: (scores.len() - n) as u32,
        mean: on_scale.iter().map(|score| f64::from(*score)).sum::<f64>() / n as f64,
        median: f64::midpoint(at(n.saturating_sub(1) / 2), at(n / 2)),
    }
}

/// Two samples scored by the same tasters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Paired {
    /// The mean of the differences, first less second.
    pub difference: f64,
    /// Student's `t`.
    pub t: f64,
    /// How likely so large a difference either way is by chance.
    pub chance: Fraction,
}

/// Returns the paired comparison of two samples' scores.
///
/// ```text
/// t = d̄ / (s/√n)     with n − 1 degrees of freedom, two-sided
/// ```
///
/// | symbol | meaning                              | unit |
/// |--------|--------------------------------------|------|
/// | `d̄`    | mean of the differences              | –    |
/// | `s`    | their standard deviation             | –    |
/// | `n`    | tasters                              | –    |
///
/// Holds only if the scale's steps are equal and the differences scatter evenly; it is not a number for
/// fewer than two tasters or for differences that are all the same. Surplus scores are left out.
///
/// ```
/// let first = [6.0, 7.0, 8.0, 6.0];
/// let second = [5.0, 7.0, 6.0, 5.0];
/// let paired = science::sensory::hedonic::paired(&first, &second);
/// assert_eq!(format!("{:.3}", paired.t), "2.449");
/// ```
#[must_use]
pub fn paired(first: &[f64], second: &[f64]) -> Paired {
    let differences: Vec<f64> = first.iter().zip(second).map(|(a, b)| a - b).collect();
    let n = differences.len() as f64;
    let mean = differences.iter().sum::<f64>() / n;
    let variance = differences.iter().map(|d| (d - mean) * (d - mean)).sum::<f64>() / (n - 1.0);
    let t = mean / (variance / n).sqrt();
    let chance = match StudentsT::new(0.0, 1.0, n - 1.0) {
        Ok(student) if t.is_finite() => 2.0 * student.sf(t.abs()),
        _ => f64::NAN,
    };
    Paired { difference: mean, t, chance: Fraction::ratio(chance) }
}

/// Returns the two-sided limits of the mean difference of two samples' scores, first less second.
///
/// `d̄ ± t·s/√n`; not numbers for fewer than two tasters.
///
/// ```
/// # use quantity::Fraction;
/// let limits = science::sensory::hedonic::limits(&[6.0, 7.0, 8.0, 6.0], &[5.0, 7.0, 6.0, 5.0], Fraction::percent(95.0));
/// assert_eq!(format!("{:.2} to {:.2}", limits.from, limits.to), "-0.30 to 2.30");
/// ```
#[must_use]
pub fn limits(first: &[f64], second: &[f64], confidence: Fraction) -> Between<f64> {
    let differences: Vec<f64> = first.iter().zip(second).map(|(a, b)| a - b).collect();
    let n = differences.len() as f64;
    let mean = differences.iter().sum::<f64>() / n;
    let variance = differences.iter().map(|d| (d - mean) * (d - mean)).sum::<f64>() / (n - 1.0);
    let tail = confidence.left().as_ratio() / 2.0;
    let t = match StudentsT::new(0.0, 1.0, n - 1.0) {
        Ok(student) if tail > 0.0 && tail < 1.0 => student.inverse_cdf(1.0 - tail),
        _ => f64::NAN,
    };
    let reach = t * (variance / n).sqrt();
    Between { from: mean - reach, to: mean + reach }
}
