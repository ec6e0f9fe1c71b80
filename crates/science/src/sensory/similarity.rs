//! May two be called alike: the most right answers that still allow it.

use super::discriminators::{estimate, normal_quantile};
use super::forced_choice::{Test, at_least};
use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::similarity",
    source: "iso-4120-2021",
    place: "Table A.2; exact binomial, and the normal upper limit beside it",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "n", unit: "answers", from: 30.0, to: 2000.0 },
        Valid { symbol: "p_d", unit: "%", from: 10.0, to: 50.0 },
        Valid { symbol: "β", unit: "%", from: 0.1, to: 20.0 },
    ],
};

/// Which of two recipes in use; their answers differ by none or one. Say which was used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Recipe {
    /// The chance of so few right answers if more than the tolerated share told the difference.
    Exact,
    /// The upper normal limit of the share lies below the tolerated one.
    NormalLimit,
}

/// Returns the most right answers with which two may be called alike, or none if none allow it.
///
/// ```text
/// exact: largest x with P(X ≤ x) ≤ β,  X binomial with n and p_d + (1 − p_d)·g
/// ```
///
/// | symbol | meaning                                     | unit |
/// |--------|---------------------------------------------|------|
/// | `n`    | answers, each of another person             | –    |
/// | `p_d`  | share of discriminators that is tolerated   | –    |
/// | `β`    | risk of calling alike what is not           | –    |
/// | `g`    | share of right guesses                      | –    |
///
/// Valid for 30 answers and more; repeats by one person are not independent here. ISO 4120.
///
/// ```
/// # use quantity::Fraction;
/// use science::sensory::{forced_choice::Test, similarity::{Recipe, most}};
/// let (tolerated, risk) = (Fraction::percent(30.0), Fraction::percent(5.0));
/// assert_eq!(most(Test::Triangle, 60, tolerated, risk, Recipe::Exact), Some(25));
/// ```
#[must_use]
pub fn most(test: Test, answers: u32, tolerated: Fraction, risk: Fraction, recipe: Recipe) -> Option<u32> {
    let alike = |right: u32| match recipe {
        Recipe::Exact => {
            let correct = tolerated.as_ratio() + tolerated.left().as_ratio() * test.guess();
            1.0 - at_least(right.saturating_add(1), answers, correct) <= risk.as_ratio()
        }
        Recipe::NormalLimit => {
            let (share, error) = estimate(test, right, answers);
            share + error * normal_quantile(risk.left().as_ratio()) < tolerated
        }
    };
    // Both measures grow with the right answers up to the panel's size.
    let (mut allowed, mut refused) = (None, answers.saturating_add(1));
    let mut low = 0;
    while low < refused {
        let middle = u32::midpoint(low, refused - 1);
        if alike(middle) {
            allowed = Some(middle);
            low = middle + 1;
        } else {
            refused = middle;
        }
    }
    allowed
}
