//! How likely a ranking finds that one sample stands out, and how many tasters that takes.

use super::blind_code::Chance;
use super::friedman::{exact_critical, statistic};
use crate::{Equation, Standing, Valid};
use quantity::Fraction;
use statrs::distribution::{ChiSquared, ContinuousCDF, DiscreteCDF, Poisson};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::ranking_power",
    source: "trade",
    place: "the guessing model of ISO 4120 carried over to ranks; panels made up at random",
    standing: Standing::CommonPractice,
    valid: &[
        Valid { symbol: "J", unit: "tasters", from: 2.0, to: 500.0 },
        Valid { symbol: "P", unit: "samples", from: 3.0, to: 8.0 },
        Valid { symbol: "p_d", unit: "%", from: 10.0, to: 90.0 },
    ],
};

/// So many panels are made up: a share of four in five is then known to within 1.3 points, 95 times in 100.
const PANELS: u32 = 4000;
/// Where they start.
const SEED: u64 = 8587;
/// Panels are tried up to this size.
const LARGEST_PANEL: usize = 500;
const MOST_SAMPLES: usize = 20;
/// Up to so many tasters, raised to the samples less one, the exact critical value is counted out.
const COUNTED: f64 = 10_000.0;

/// Returns how often Friedman's test finds one sample that stands out, over panels made up at random.
///
/// ```text
/// a taster puts the sample first with p_d + (1 − p_d)/P, each other order equally likely
/// ```
///
/// | symbol | meaning                                                | unit |
/// |--------|--------------------------------------------------------|------|
/// | `p_d`  | share of people who truly tell that it stands out      | –    |
/// | `P`    | samples, the others alike                              | –    |
/// | `J`    | tasters                                                | –    |
///
/// The test is the exact one for small panels, chi-squared for others. Seeded: the same figure on every machine.
/// Not a number for fewer than two tasters or three samples. Common practice, no source: who tells it is certain, who
/// does not guesses, as ISO 4120 has it for triangles.
///
/// ```
/// # use quantity::Fraction;
/// let found = science::sensory::ranking_power::power(24, 3, Fraction::percent(40.0), Fraction::percent(5.0));
/// assert!((0.5..0.7).contains(&found.as_ratio()));
/// ```
#[must_use]
pub fn power(tasters: usize, samples: usize, discriminators: Fraction, significance: Fraction) -> Fraction {
    let share = discriminators.as_ratio();
    let Some(critical) = critical(tasters, samples, significance).filter(|_| (0.0..=1.0).contains(&share)) else {
        return Fraction::ratio(f64::NAN);
    };
    let mut chance = Chance::seeded(SEED);
    let mut found = 0_u32;
    let mut row: Vec<usize> = (0..samples).collect();
    for _ in 0..PANELS {
        let mut sums = vec![0.0; samples];
        for _ in 0..tasters {
            chance.shuffle(&mut row);
            if even(&mut chance) < share {
                let at = row.iter().position(|sample| *sample == 0).unwrap_or_default();
                row[..=at].rotate_right(1);
            }
            row.iter().zip(1_u32..).for_each(|(sample, rank)| sums[*sample] += f64::from(rank));
        }
        found += u32::from(statistic(&sums, tasters, 0.0) >= critical - 1e-9);
    }
    Fraction::ratio(f64::from(found) / f64::from(PANELS))
}

/// Returns the smallest panel that finds it so often, or none up to five hundred tasters.
///
/// ```
/// # use quantity::Fraction;
/// let percent = Fraction::percent;
/// let panel = science::sensory::ranking_power::smallest(3, percent(40.0), percent(5.0), percent(80.0));
/// assert!(panel.is_some_and(|panel| (34..46).contains(&panel)));
/// ```
#[must_use]
pub fn smallest(samples: usize, discriminators: Fraction, significance: Fraction, wanted: Fraction) -> Option<usize> {
    let is_enough = |tasters: usize| power(tasters, samples, discriminators, significance) >= wanted;
    let near = (2..=LARGEST_PANEL).find(|tasters| approximate(*tasters, samples, discriminators, significance) >= wanted)?;
    // The approximation is right to within a few tasters: go down while it is enough, or up until it is.
    if is_enough(near) {
        return (2..near).rev().take_while(|tasters| is_enough(*tasters)).last().or(Some(near));
    }
    (near + 1..=LARGEST_PANEL).find(|tasters| is_enough(*tasters))
}

/// Returns the same by the noncentral chi-squared distribution, for large panels and small differences.
///
/// ```text
/// power = P(χ²(P−1, λ) ≥ χ²_crit),   λ = 3·J·p_d²·(P−1)/(P+1)
/// ```
///
/// ```
/// # use quantity::Fraction;
/// let found = science::sensory::ranking_power::approximate(100, 3, Fraction::percent(20.0), Fraction::percent(5.0));
/// assert_eq!(format!("{:.3}", found.as_ratio()), "0.584");
/// ```
#[must_use]
pub fn approximate(tasters: usize, samples: usize, discriminators: Fraction, significance: Fraction) -> Fraction {
    let (j, p, share) = (tasters as f64, samples as f64, discriminators.as_ratio());
    if !is_valid(tasters, samples) || !(0.0..=1.0).contains(&share) {
        return Fraction::ratio(f64::NAN);
    }
    let half = 1.5 * j * share * share * (p - 1.0) / (p + 1.0);
    let (Ok(spread), Some(critical)) = (Poisson::new(half), chi_squared(samples, significance)) else {
        return Fraction::ratio(f64::NAN);
    };
    // A noncentral chi-squared is a mixture of central ones, by Poisson's law.
    let most = half as u64 + 10 * half.sqrt() as u64 + 20;
    let mut before = 0.0;
    let mut missed = 0.0;
    for more in 0..=most {
        let until = spread.cdf(more);
        let central = ChiSquared::new(p - 1.0 + 2.0 * more as f64).map_or(f64::NAN, |law| law.cdf(critical));
        missed += (until - before) * central;
        before = until;
    }
    Fraction::ratio((1.0 - missed).clamp(0.0, 1.0))
}

fn is_valid(tasters: usize, samples: usize) -> bool {
    (2..=LARGEST_PANEL).contains(&tasters) && (3..=MOST_SAMPLES).contains(&samples)
}

/// The statistic from which on a panel finds something.
fn critical(tasters: usize, samples: usize, significance: Fraction) -> Option<f64> {
    if !is_valid(tasters, samples) {
        return None;
    }
    let ways = libm::pow(tasters as f64, samples as f64 - 1.0);
    if ways <= COUNTED {
        // Where nothing is significant no statistic is large enough.
        return Some(exact_critical(tasters, samples, significance).unwrap_or(f64::INFINITY));
    }
    chi_squared(samples, significance)
}

fn chi_squared(samples: usize, significance: Fraction) -> Option<f64> {
    let risk = Some(significance.as_ratio()).filter(|risk| (0.0..1.0).contains(risk))?;
    ChiSquared::new(samples as f64 - 1.0).ok().map(|law| law.inverse_cdf(1.0 - risk))
}

/// A number from 0 up to 1.
const fn even(chance: &mut Chance) -> f64 {
    (chance.bits() >> 11) as f64 / (1_u64 << 53) as f64
}
