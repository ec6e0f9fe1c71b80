//! Is one of two samples given more points, without trusting the steps of the scale?

use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::signed_rank",
    source: "wilcoxon-1945",
    place: "signed ranks; exact, ties sharing their ranks, differences of nought left out",
    standing: Standing::Published,
    valid: &[Valid { symbol: "n", unit: "tasters", from: 1.0, to: 500.0 }],
};

/// The exact distribution is counted up to so many differences.
const MOST: usize = 500;

/// What the ranks of the differences say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SignedRanks {
    /// The sum of the ranks of those that are above nought.
    pub positive: f64,
    /// How many differences are not nought.
    pub counted: usize,
    /// How likely so uneven ranks are by chance, either way; none for more differences than are counted out.
    pub chance: Option<Fraction>,
}

/// Returns what the signed ranks of differences say.
///
/// ```text
/// W = Σ rank(|d_i|) over d_i > 0     p = P(|W − n·(n+1)/4| ≥ observed), every sign equally likely
/// ```
///
/// | symbol | meaning                                 | unit |
/// |--------|-----------------------------------------|------|
/// | `W`    | sum of the ranks of positive differences | –   |
/// | `d_i`  | a taster's difference, first less second | –   |
/// | `n`    | differences that are not nought          | –   |
/// | `p`    | chance, two-sided                        | –   |
///
/// Exact also with ties. Without a difference it is certain chance: 1. Differences that are no numbers are left
/// out. Wilcoxon (1945).
///
/// ```
/// let told = science::sensory::signed_rank::signed_ranks(&[1.0, 1.0, 1.0, 1.0, 1.0]);
/// assert_eq!(told.chance.map(|chance| chance.as_ratio()), Some(0.0625));
/// ```
#[must_use]
pub fn signed_ranks(differences: &[f64]) -> SignedRanks {
    let told: Vec<f64> = differences.iter().copied().filter(|d| d.is_finite() && *d != 0.0).collect();
    // Doubled, the middles of shared ranks are whole numbers.
    let doubled = |d: f64| {
        let below = told.iter().filter(|other| other.abs() < d.abs()).count();
        let equal = told.iter().filter(|other| (other.abs() - d.abs()).abs() <= 0.0).count();
        2 * below + equal + 1
    };
    let ranks: Vec<usize> = if told.len() <= MOST { told.iter().map(|d| doubled(*d)).collect() } else { Vec::new() };
    let positive: usize = told.iter().zip(&ranks).filter(|(d, _)| **d > 0.0).map(|(_, rank)| rank).sum();
    let chance = (told.len() <= MOST).then(|| two_sided(&ranks, positive));
    let positive = if chance.is_some() { positive as f64 / 2.0 } else { f64::NAN };
    SignedRanks { positive, counted: told.len(), chance }
}

/// The share of all signs that are at least as uneven.
fn two_sided(ranks: &[usize], positive: usize) -> Fraction {
    let whole: usize = ranks.iter().sum();
    let mut spread = vec![0.0; whole + 1];
    spread[0] = 1.0_f64;
    let mut reached = 0;
    for rank in ranks {
        reached += rank;
        for sum in (0..=reached).rev() {
            let with = if sum >= *rank { spread[sum - rank] } else { 0.0 };
            spread[sum] = 0.5 * (spread[sum] + with);
        }
    }
    let off = |sum: usize| (2 * sum).abs_diff(whole);
    let tail: f64 = spread.iter().enumerate().filter(|(sum, _)| off(*sum) >= off(positive)).map(|(_, share)| share).sum();
    Fraction::ratio(tail.min(1.0))
}
