//! Triangle, duo-trio and paired tests: how many right answers are more than guessing.

use crate::{Equation, Standing, Valid};
use quantity::Fraction;
use statrs::distribution::{Binomial, DiscreteCDF};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::forced_choice",
    source: "iso-4120-2021",
    place: "Table A.1; ISO 10399 and ISO 5495 alike; exact binomial",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "n", unit: "answers", from: 6.0, to: 2000.0 },
        Valid { symbol: "x", unit: "answers", from: 0.0, to: 2000.0 },
    ],
};

/// How the question is put, and by it how often a guess is right.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Test {
    /// Three cups, one of them different: a guess is right in one of three. ISO 4120.
    Triangle,
    /// A reference and two cups: one of two. ISO 10399.
    DuoTrio,
    /// Two cups, which has more of something, the direction fixed beforehand: one of two. ISO 5495.
    PairedDirected,
    /// Two cups, which is preferred: one of two, and either may win.
    PairedPreference,
}

impl Test {
    /// How often a guess is right.
    #[must_use]
    pub const fn guess(self) -> f64 {
        match self {
            Self::Triangle => 1.0 / 3.0,
            Self::DuoTrio | Self::PairedDirected | Self::PairedPreference => 0.5,
        }
    }

    /// How many tails count: two where either answer may win.
    #[must_use]
    pub const fn sides(self) -> f64 {
        match self {
            Self::PairedPreference => 2.0,
            Self::Triangle | Self::DuoTrio | Self::PairedDirected => 1.0,
        }
    }
}

/// The chance of at least `right` of `answers` when each is right with `share`.
pub(super) fn at_least(right: u32, answers: u32, share: f64) -> f64 {
    if right == 0 {
        return 1.0;
    }
    Binomial::new(share, u64::from(answers)).map_or(f64::NAN, |binomial| binomial.sf(u64::from(right - 1)))
}

/// Returns how likely so many right answers are when everybody guesses.
///
/// ```text
/// p = P(X ≥ x),   X binomial with n answers and g
/// ```
///
/// | symbol | meaning                                             | unit |
/// |--------|-----------------------------------------------------|------|
/// | `p`    | chance under guessing                               | –    |
/// | `x`    | right answers; for a preference those of the winner | –    |
/// | `n`    | answers                                             | –    |
/// | `g`    | share of right guesses                              | –    |
///
/// Exact for independent answers of different people; a preference doubles it. More right answers than
/// answers have no chance: 0. ISO 4120, exact binomial.
///
/// ```
/// use science::sensory::forced_choice::{Test, chance};
/// assert_eq!(format!("{:.6}", chance(Test::Triangle, 8, 12).as_ratio()), "0.018758");
/// ```
#[must_use]
pub fn chance(test: Test, right: u32, answers: u32) -> Fraction {
    Fraction::ratio((test.sides() * at_least(right, answers, test.guess())).min(1.0))
}

/// Returns how many standard deviations so many right answers lie above what guessing gives.
///
/// `z = (x − n·g)/√(n·g·(1 − g))`; for large panels only, where the exact chance is there as well: go by that one.
/// Not a number without answers. Hollander & Wolfe (1973).
///
/// ```
/// use science::sensory::forced_choice::{Test, deviations};
/// assert_eq!(format!("{:.2}", deviations(Test::Triangle, 25, 50)), "2.50");
/// ```
#[must_use]
pub fn deviations(test: Test, right: u32, answers: u32) -> f64 {
    let (n, g) = (f64::from(answers), test.guess());
    (f64::from(right) - n * g) / (n * g * (1.0 - g)).sqrt()
}

/// Returns the fewest right answers that are significant, or none if even all right are not.
///
/// ```
/// # use quantity::Fraction;
/// use science::sensory::forced_choice::{Test, fewest};
/// assert_eq!(fewest(Test::Triangle, 24, Fraction::percent(5.0)), Some(13));
/// ```
#[must_use]
pub fn fewest(test: Test, answers: u32, significance: Fraction) -> Option<u32> {
    let enough = |right: u32| test.sides() * at_least(right, answers, test.guess()) <= significance.as_ratio();
    if !enough(answers) {
        return None;
    }
    // The chance falls with every right answer more, so halving finds the first that is enough.
    let (mut short, mut long) = (0, answers);
    while short < long {
        let middle = u32::midpoint(short, long);
        if enough(middle) {
            long = middle;
        } else {
            short = middle + 1;
        }
    }
    Some(long)
}
