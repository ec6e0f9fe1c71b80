//! How likely a panel finds a difference in points, and how many tasters that takes.

use super::discriminators::normal_quantile;
use crate::{Equation, Standing, Valid};
use quantity::Fraction;
use statrs::distribution::{ChiSquared, Continuous, ContinuousCDF, Normal, StudentsT};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::paired_power",
    source: "cohen-1988",
    place: "chapter 2, the paired t test, two-sided",
    standing: Standing::Published,
    valid: &[Valid { symbol: "n", unit: "tasters", from: 3.0, to: 2000.0 }, Valid { symbol: "d", unit: "–", from: 0.1, to: 4.0 }],
};

/// Panels are tried up to this size.
const LARGEST_PANEL: usize = 2000;
/// Strips of the integral, and how many standard deviations it reaches to either side.
const STRIPS: usize = 400;
const REACH: f64 = 9.0;

/// Returns the chance that a paired test finds a difference.
///
/// ```text
/// power = ∫ Φ(δ − t·s) + Φ(−δ − t·s) dF(s),   δ = d·√n,   (n−1)·s² chi-squared with n − 1 degrees of freedom
/// ```
///
/// | symbol | meaning                                                        | unit |
/// |--------|----------------------------------------------------------------|------|
/// | `d`    | mean difference over the differences' standard deviation       | –    |
/// | `n`    | tasters                                                        | –    |
/// | `t`    | Student's quantile of the two-sided risk                       | –    |
///
/// Differences are taken as normally scattered. Not a number for fewer than two tasters. Cohen (1988).
///
/// ```
/// # use quantity::Fraction;
/// let found = science::sensory::paired_power::power(34, 0.5, Fraction::percent(5.0));
/// assert_eq!(format!("{:.3}", found.as_ratio()), "0.808");
/// ```
#[must_use]
pub fn power(tasters: usize, difference: f64, significance: Fraction) -> Fraction {
    let freedom = tasters as f64 - 1.0;
    let laws = (ChiSquared::new(freedom), Normal::new(0.0, 1.0), StudentsT::new(0.0, 1.0, freedom));
    let risk = significance.as_ratio();
    let (Ok(spread), Ok(normal), Ok(student)) = laws else { return Fraction::ratio(f64::NAN) };
    if !difference.is_finite() || !(0.0..=1.0).contains(&risk) || tasters > LARGEST_PANEL {
        return Fraction::ratio(f64::NAN);
    }
    let t = student.inverse_cdf(1.0 - risk / 2.0);
    let shift = difference * (tasters as f64).sqrt();
    // In the logarithm of s the integrand is smooth down to few tasters; Simpson's rule.
    let (low, high) = (-REACH / freedom.sqrt() - 4.0 / freedom, REACH / freedom.sqrt());
    let step = (high - low) / STRIPS as f64;
    let at = |strip: usize| {
        let s = libm::exp(low + step * strip as f64);
        let weight = spread.pdf(freedom * s * s) * 2.0 * freedom * s * s;
        weight * (normal.cdf(shift - t * s) + normal.cdf(-shift - t * s))
    };
    let inner: f64 = (1..STRIPS).map(|strip| if strip % 2 == 1 { 4.0 * at(strip) } else { 2.0 * at(strip) }).sum();
    Fraction::ratio(((at(0) + inner + at(STRIPS)) * step / 3.0).clamp(0.0, 1.0))
}

/// Returns the smallest panel whose paired test reaches the power, or none up to two thousand tasters.
///
/// ```
/// # use quantity::Fraction;
/// let percent = Fraction::percent;
/// assert_eq!(science::sensory::paired_power::smallest(0.5, percent(5.0), percent(80.0)), Some(34));
/// ```
#[must_use]
pub fn smallest(difference: f64, significance: Fraction, wanted: Fraction) -> Option<usize> {
    // The normal approximation falls short by a few tasters: begin a little below it.
    let z = normal_quantile(1.0 - significance.as_ratio() / 2.0) + normal_quantile(wanted.as_ratio());
    let near = (z / difference) * (z / difference);
    let begin = if near.is_finite() { (near as usize).saturating_sub(3).clamp(3, LARGEST_PANEL) } else { return None };
    (begin..=LARGEST_PANEL).find(|tasters| power(*tasters, difference, significance) >= wanted)
}
