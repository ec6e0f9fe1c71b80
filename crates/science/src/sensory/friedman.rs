//! Ranking test: do the samples differ in rank at all, and which from which.

use super::discriminators::normal_quantile;
use super::ranks::Ranks;
use crate::{Equation, Standing, Valid};
use quantity::Fraction;
use statrs::distribution::{ChiSquared, ContinuousCDF};
use std::collections::BTreeMap;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::friedman",
    source: "iso-8587-2006",
    place: "Friedman's test, ties, least significant difference, Annex A",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "J", unit: "tasters", from: 2.0, to: 500.0 },
        Valid { symbol: "P", unit: "samples", from: 3.0, to: 20.0 },
    ],
};

/// The exact distribution is computed up to so many samples, steps and tasters; beyond, take chi-squared.
const MOST_SAMPLES: usize = 6;
const MOST_STEPS: usize = 4_000_000;
const MOST_TASTERS: usize = 500;

/// Returns Friedman's statistic from rank sums.
///
/// ```text
/// F = 12/(J·P·(P+1)) · Σ R² − 3·J·(P+1)        ties: F / (1 − Σ(t³ − t)/(J·P·(P² − 1)))
/// ```
///
/// | symbol | meaning                  | unit |
/// |--------|--------------------------|------|
/// | `J`    | tasters                  | –    |
/// | `P`    | samples                  | –    |
/// | `R`    | rank sum of a sample     | –    |
/// | `t`    | ranks shared by a taster | –    |
///
/// Valid for two tasters and three samples on; without a taster, or where everybody ties everything, it is
/// not a number. ISO 8587.
///
/// ```
/// let f = science::sensory::friedman::statistic(&[17.0, 31.0, 32.0, 23.0, 17.0], 8, 0.0);
/// assert_eq!(format!("{f:.2}"), "10.60");
/// ```
#[must_use]
pub fn statistic(sums: &[f64], tasters: usize, ties: f64) -> f64 {
    let (j, p) = (tasters as f64, sums.len() as f64);
    let squares: f64 = sums.iter().map(|sum| sum * sum).sum();
    let plain = 12.0 / (j * p * (p + 1.0)) * squares - 3.0 * j * (p + 1.0);
    plain / (1.0 - ties / (j * p * (p * p - 1.0)))
}

/// Returns how likely so large a statistic is by chance, by the chi-squared approximation.
///
/// ```
/// let p = science::sensory::friedman::chance(10.60, 5);
/// assert_eq!(format!("{:.4}", p.as_ratio()), "0.0314");
/// ```
#[must_use]
pub fn chance(statistic: f64, samples: usize) -> Fraction {
    let freedom = samples.saturating_sub(1) as f64;
    Fraction::ratio(match ChiSquared::new(freedom) {
        Ok(chi_squared) if !statistic.is_nan() => chi_squared.sf(statistic.max(0.0)),
        _ => f64::NAN,
    })
}

/// Returns how far tasters agree: Kendall's coefficient of concordance, 0 for not at all, 1 for all alike.
///
/// `W = F/(J·(P − 1))`. Kendall & Babington Smith (1939).
///
/// ```
/// let w = science::sensory::friedman::agreement(10.60, 8, 5);
/// assert_eq!(format!("{w:.3}"), "0.331");
/// ```
#[must_use]
pub fn agreement(statistic: f64, tasters: usize, samples: usize) -> f64 {
    statistic / (tasters as f64 * (samples as f64 - 1.0))
}

/// Returns the difference of two rank sums from which on two samples differ, pair by pair.
///
/// `LSD = z·√(J·P·(P+1)/6)`; the 6 is under the root, a 5 found in a hand-out is a misprint.
///
/// ```
/// # use quantity::Fraction;
/// let least = science::sensory::friedman::least_difference(8, 5, Fraction::percent(5.0));
/// assert_eq!(format!("{least:.2}"), "12.40");
/// ```
#[must_use]
pub fn least_difference(tasters: usize, samples: usize, significance: Fraction) -> f64 {
    let (j, p) = (tasters as f64, samples as f64);
    normal_quantile(1.0 - significance.as_ratio() / 2.0) * (j * p * (p + 1.0) / 6.0).sqrt()
}

/// Rank sums, doubled so that halves are whole, in rising order.
type State = [u32; MOST_SAMPLES];

/// Returns the exact chance of rank sums at least as spread, ties and all, or none where the panel is too
/// large to enumerate: every order of each taster's ranks is equally likely.
///
/// ```
/// use science::sensory::{friedman::exact_chance, ranks::Ranks};
/// let unanimous = Ranks::of(&vec![vec![1.0, 2.0, 3.0]; 3]).expect("ranks");
/// assert_eq!(format!("{:.4}", exact_chance(&unanimous).expect("small").as_ratio()), "0.0278");
/// ```
#[must_use]
pub fn exact_chance(ranks: &Ranks) -> Option<Fraction> {
    let doubled: Vec<Vec<u32>> = ranks.rows().iter().map(|row| row.iter().map(|rank| (rank * 2.0) as u32).collect()).collect();
    let spread = distribution(&doubled, ranks.samples())?;
    let sums = ranks.sums();
    let squares: f64 = sums.iter().map(|sum| 4.0 * sum * sum).sum();
    let met = spread.range((squares - 0.5).max(0.0) as u64 + 1..);
    Some(Fraction::ratio(met.map(|(_, share)| share).sum::<f64>().min(1.0)))
}

/// Returns the smallest attainable statistic that is significant for a panel without ties, exactly, or none
/// where the panel is too large to enumerate or nothing is significant.
///
/// ```
/// # use quantity::Fraction;
/// let critical = science::sensory::friedman::exact_critical(5, 3, Fraction::percent(5.0));
/// assert_eq!(critical.map(|f| format!("{f:.2}")), Some("6.40".to_owned()));
/// ```
#[must_use]
pub fn exact_critical(tasters: usize, samples: usize, significance: Fraction) -> Option<f64> {
    let row: Vec<u32> = (1..=samples.min(MOST_SAMPLES + 1)).map(|rank| 2 * rank as u32).collect();
    if tasters == 0 || tasters > MOST_TASTERS {
        return None;
    }
    let spread = distribution(&vec![row; tasters], samples)?;
    let mut tail = 0.0;
    let mut smallest = None;
    for (squares, share) in spread.iter().rev() {
        tail += share;
        if tail > significance.as_ratio() + 1e-12 {
            break;
        }
        smallest = Some(*squares as f64 / 4.0);
    }
    let (j, p) = (tasters as f64, samples as f64);
    smallest.map(|squares| 12.0 / (j * p * (p + 1.0)) * squares - 3.0 * j * (p + 1.0))
}

/// The distribution of the sum of squared doubled rank sums. Because every order is equally likely for each
/// taster, states that differ only in the samples' order are one state.
fn distribution(rows: &[Vec<u32>], samples: usize) -> Option<BTreeMap<u64, f64>> {
    if samples > MOST_SAMPLES {
        return None;
    }
    let mut states: BTreeMap<State, f64> = BTreeMap::from([(State::default(), 1.0)]);
    let mut steps = 0;
    for row in rows {
        let orders = orders(row);
        steps += states.len() * orders.len();
        if steps > MOST_STEPS {
            return None;
        }
        let share = 1.0 / orders.len() as f64;
        let mut next: BTreeMap<State, f64> = BTreeMap::new();
        for (state, chance) in &states {
            for order in &orders {
                *next.entry(joined(state, order)).or_default() += chance * share;
            }
        }
        states = next;
    }
    let mut spread = BTreeMap::new();
    for (state, chance) in states {
        let squares = state.iter().map(|sum| u64::from(*sum) * u64::from(*sum)).sum();
        *spread.entry(squares).or_default() += chance;
    }
    Some(spread)
}

fn joined(state: &State, order: &[u32]) -> State {
    let mut next = *state;
    // Unused places stay zero in front because the state is in rising order.
    let from = MOST_SAMPLES - order.len();
    next[from..].iter_mut().zip(order).for_each(|(sum, rank)| *sum = sum.saturating_add(*rank));
    next.sort_unstable();
    next
}

/// Every order of a row, repeats included so that shares stay equal.
fn orders(row: &[u32]) -> Vec<Vec<u32>> {
    let Some((last, rest)) = row.split_last() else { return vec![Vec::new()] };
    let mut all = Vec::new();
    for order in orders(rest) {
        for place in 0..=order.len() {
            let mut longer = order.clone();
            longer.insert(place, *last);
            all.push(longer);
        }
    }
    all
}
