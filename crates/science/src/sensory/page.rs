//! Do the samples rise in the order that was expected before tasting?

use super::discriminators::normal_quantile;
use super::ranks::Ranks;
use crate::{Equation, Standing, Valid};
use quantity::Fraction;
use statrs::distribution::{ContinuousCDF, Normal};
use std::collections::BTreeMap;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::page",
    source: "page-1963",
    place: "L for ordered alternatives; ISO 8587",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "J", unit: "tasters", from: 2.0, to: 500.0 },
        Valid { symbol: "P", unit: "samples", from: 3.0, to: 20.0 },
    ],
};

/// The exact distribution is computed up to so many samples and tasters; beyond, take the normal one.
const MOST_SAMPLES: usize = 7;
const MOST_TASTERS: usize = 60;

/// Returns Page's `L` from rank sums in the order that was expected.
///
/// ```text
/// L = Σ i·R_i     mean J·P·(P+1)²/4     variance J·P²·(P+1)²·(P−1)/144
/// ```
///
/// | symbol | meaning                                   | unit |
/// |--------|-------------------------------------------|------|
/// | `i`    | expected place of a sample                | –    |
/// | `R_i`  | its rank sum                              | –    |
/// | `J`    | tasters                                   | –    |
/// | `P`    | samples                                   | –    |
///
/// The order is fixed before anybody tastes. Page (1963); ISO 8587.
///
/// ```
/// assert_eq!(science::sensory::page::statistic(&[9.0, 6.0, 11.0, 20.0, 20.0, 18.0]), 342.0);
/// ```
#[must_use]
pub fn statistic(sums: &[f64]) -> f64 {
    sums.iter().zip(1_u32..).map(|(sum, place)| f64::from(place) * sum).sum()
}

/// Returns the mean of `L` where every order is equally likely, and its standard deviation.
///
/// ```
/// let (mean, deviation) = science::sensory::page::moments(4, 6);
/// assert_eq!(format!("{mean} {deviation:.3}"), "294 15.652");
/// ```
#[must_use]
pub fn moments(tasters: usize, samples: usize) -> (f64, f64) {
    let (j, p) = (tasters as f64, samples as f64);
    let mean = j * p * (p + 1.0) * (p + 1.0) / 4.0;
    (mean, (j * p * p * (p + 1.0) * (p + 1.0) * (p - 1.0) / 144.0).sqrt())
}

/// Returns how many standard deviations `L` lies above its mean.
///
/// ```
/// assert_eq!(format!("{:.3}", science::sensory::page::deviations(342.0, 4, 6)), "3.067");
/// ```
#[must_use]
pub fn deviations(statistic: f64, tasters: usize, samples: usize) -> f64 {
    let (mean, deviation) = moments(tasters, samples);
    (statistic - mean) / deviation
}

/// Returns how likely so large an `L` is by chance, by the normal approximation.
///
/// ```
/// let p = science::sensory::page::chance(342.0, 4, 6);
/// assert_eq!(format!("{:.4}", p.as_ratio()), "0.0011");
/// ```
#[must_use]
pub fn chance(statistic: f64, tasters: usize, samples: usize) -> Fraction {
    let z = deviations(statistic, tasters, samples);
    Fraction::ratio(match Normal::new(0.0, 1.0) {
        Ok(normal) if z.is_finite() => normal.sf(z),
        _ => f64::NAN,
    })
}

/// Returns the `L` that is significant by the normal approximation.
///
/// ```
/// # use quantity::Fraction;
/// let critical = science::sensory::page::critical(8, 5, Fraction::percent(5.0));
/// assert_eq!(format!("{critical:.1}"), "383.3");
/// ```
#[must_use]
pub fn critical(tasters: usize, samples: usize, significance: Fraction) -> f64 {
    let (mean, deviation) = moments(tasters, samples);
    mean + normal_quantile(significance.left().as_ratio()) * deviation
}

/// Returns the exact chance of an `L` at least as large as these ranks give, ties and all, or none where the
/// panel is too large to enumerate.
///
/// ```
/// use science::sensory::{page::exact_chance, ranks::Ranks};
/// let expected = Ranks::of(&vec![vec![1.0, 2.0, 3.0]; 3]).expect("ranks");
/// assert_eq!(format!("{:.4}", exact_chance(&expected).expect("small").as_ratio()), "0.0046");
/// ```
#[must_use]
pub fn exact_chance(ranks: &Ranks) -> Option<Fraction> {
    let doubled: Vec<Vec<u32>> = ranks.rows().iter().map(|row| row.iter().map(|rank| (rank * 2.0) as u32).collect()).collect();
    let spread = distribution(&doubled, ranks.samples())?;
    let reached = (statistic(&ranks.sums()) * 2.0).round() as u32;
    Some(Fraction::ratio(spread.range(reached..).map(|(_, share)| share).sum::<f64>().min(1.0)))
}

/// Returns the smallest `L` that is significant for a panel without ties, exactly, or none where the panel is
/// too large to enumerate or nothing is significant.
///
/// ```
/// # use quantity::Fraction;
/// let critical = science::sensory::page::exact_critical(5, 3, Fraction::percent(5.0));
/// assert_eq!(critical, Some(66.0));
/// ```
#[must_use]
pub fn exact_critical(tasters: usize, samples: usize, significance: Fraction) -> Option<f64> {
    if tasters == 0 || tasters > MOST_TASTERS || samples > MOST_SAMPLES {
        return None;
    }
    let row: Vec<u32> = (1..=samples).map(|rank| 2 * rank as u32).collect();
    let spread = distribution(&vec![row; tasters], samples)?;
    let mut tail = 0.0;
    let mut smallest = None;
    for (doubled, share) in spread.iter().rev() {
        tail += share;
        if tail > significance.as_ratio() + 1e-12 {
            break;
        }
        smallest = Some(f64::from(*doubled) / 2.0);
    }
    smallest
}

/// The distribution of the doubled `L`, taster by taster.
fn distribution(rows: &[Vec<u32>], samples: usize) -> Option<BTreeMap<u32, f64>> {
    if samples > MOST_SAMPLES || rows.len() > MOST_TASTERS {
        return None;
    }
    let mut spread = BTreeMap::from([(0_u32, 1.0)]);
    for row in rows {
        let mut one = BTreeMap::new();
        orders_of_one(row, 0, &mut vec![false; row.len()], &mut one);
        let orders: f64 = one.values().sum();
        let mut next = BTreeMap::new();
        for (so_far, chance) in &spread {
            for (more, count) in &one {
                *next.entry(so_far + more).or_default() += chance * count / orders;
            }
        }
        spread = next;
    }
    Some(spread)
}

/// Counts, for every order of one taster's ranks, the value it adds.
fn orders_of_one(row: &[u32], value: u32, used: &mut Vec<bool>, counts: &mut BTreeMap<u32, f64>) {
    let place = used.iter().filter(|used| **used).count() as u32 + 1;
    if place as usize > row.len() {
        *counts.entry(value).or_default() += 1.0;
        return;
    }
    for index in 0..row.len() {
        if !used[index] {
            used[index] = true;
            orders_of_one(row, value + place * row[index], used, counts);
            used[index] = false;
        }
    }
}
