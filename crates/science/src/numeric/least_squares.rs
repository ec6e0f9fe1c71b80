//! Fits a few constants, each between bounds, to observations.

use crate::{Equation, Standing};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "numeric::least_squares",
    source: "marquardt-1963",
    place: "the damped normal equations; bounds by projection, as in kanzow-2004",
    standing: Standing::Published,
    valid: &[],
};

/// The constants found and how well they fit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit<const P: usize> {
    /// The constants.
    pub constants: [f64; P],
    /// The sum of the squared differences.
    pub squares: f64,
    /// How many rounds were spent.
    pub rounds: usize,
}

/// The most rounds spent.
const ROUNDS: usize = 500;
/// The fit stops once a round changes no constant by more than this share.
const STILL: f64 = 1e-12;

/// Finds the constants, each within its bounds, with the least sum of squared differences.
///
/// ```text
/// (JᵀJ + λ·diag(JᵀJ))·δ = −Jᵀr,   p ← the nearest allowed to p + δ
/// λ falls tenfold after a round that lowers Σr², rises tenfold after one that does not
/// ```
///
/// | symbol   | meaning                                                       |
/// |----------|---------------------------------------------------------------|
/// | `p`      | the constants                                                 |
/// | `r`      | differences between model and observation                     |
/// | `J`      | slopes of `r` by `p`, central differences                     |
/// | `δ`      | the change asked for; a constant held at its bound stays there |
/// | `λ`      | damping                                                       |
///
/// A local method: it finds the valley it starts in. At most 500 rounds. Where differences are not
/// finite the round is refused. Marquardt (1963); Kanzow, Yamashita & Fukushima (2004).
///
/// ```
/// # use science::numeric::least_squares::fit;
/// // A line through four points: y = 1 + 2 x.
/// let points = [(0.0, 1.0), (1.0, 3.0), (2.0, 5.0), (3.0, 7.0)];
/// let line = fit(|[a, b]| points.iter().map(|(x, y)| a + b * x - y).collect(), [0.0, 0.0], [(-9.0, 9.0); 2]);
/// assert!((line.constants[0] - 1.0).abs() < 1e-9 && (line.constants[1] - 2.0).abs() < 1e-9);
/// ```
pub fn fit<const P: usize>(differences: impl Fn([f64; P]) -> Vec<f64>, start: [f64; P], bounds: [(f64, f64); P]) -> Fit<P> {
    let mut constants = within(start, &bounds);
    let mut now = differences(constants);
    let mut squares = sum_of_squares(&now);
    let mut damping = 1e-3;
    let mut rounds = 0;
    while rounds < ROUNDS && damping < 1e16 && squares > 0.0 {
        rounds += 1;
        let slopes = slopes(&differences, &constants, &bounds);
        let Some(change) = change(&slopes, &now, &constants, &bounds, damping) else {
            damping *= 10.0;
            continue;
        };
        let trial = within(std::array::from_fn(|i| constants[i] + change[i]), &bounds);
        let moved = (0..P).any(|i| (trial[i] - constants[i]).abs() > STILL * (constants[i].abs() + f64::MIN_POSITIVE));
        if !moved {
            break;
        }
        let then = differences(trial);
        let lower = sum_of_squares(&then);
        if lower < squares {
            (constants, now, squares) = (trial, then, lower);
            damping = (damping * 0.1).max(1e-15);
        } else {
            damping *= 10.0;
        }
    }
    Fit { constants, squares, rounds }
}

fn within<const P: usize>(constants: [f64; P], bounds: &[(f64, f64); P]) -> [f64; P] {
    std::array::from_fn(|i| constants[i].max(bounds[i].0).min(bounds[i].1))
}

fn sum_of_squares(differences: &[f64]) -> f64 {
    differences.iter().map(|r| r * r).sum()
}

fn slopes<const P: usize>(
    differences: &impl Fn([f64; P]) -> Vec<f64>,
    constants: &[f64; P],
    bounds: &[(f64, f64); P],
) -> [Vec<f64>; P] {
    std::array::from_fn(|i| {
        let size = 6e-6 * constants[i].abs().max(1e-8);
        let moved = |by: f64| {
            let mut moved = *constants;
            moved[i] = (moved[i] + by).max(bounds[i].0).min(bounds[i].1);
            moved
        };
        let (below, above) = (moved(-size), moved(size));
        let width = above[i] - below[i];
        differences(above).iter().zip(differences(below)).map(|(high, low)| (high - low) / width).collect()
    })
}

/// Solves the damped normal equations; nothing where they cannot be solved.
fn change<const P: usize>(
    slopes: &[Vec<f64>; P],
    now: &[f64],
    constants: &[f64; P],
    bounds: &[(f64, f64); P],
    damping: f64,
) -> Option<[f64; P]> {
    let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f64>();
    let mut right: [f64; P] = std::array::from_fn(|i| -product(&slopes[i], now));
    let held: [bool; P] = std::array::from_fn(|i| {
        (constants[i] <= bounds[i].0 && right[i] < 0.0) || (constants[i] >= bounds[i].1 && right[i] > 0.0)
    });
    let mut matrix: [[f64; P]; P] = std::array::from_fn(|i| {
        std::array::from_fn(|j| match (i == j, held[i] || held[j]) {
            (true, true) => 1.0,
            (false, true) => 0.0,
            (true, false) => product(&slopes[i], &slopes[i]) * (1.0 + damping),
            (false, false) => product(&slopes[i], &slopes[j]),
        })
    });
    for i in 0..P {
        if held[i] {
            right[i] = 0.0;
        }
    }
    eliminate(&mut matrix, &mut right);
    right.iter().all(|v| v.is_finite()).then_some(right)
}

/// Gauss elimination without exchange: the damped matrix is positive definite.
fn eliminate<const P: usize>(matrix: &mut [[f64; P]; P], right: &mut [f64; P]) {
    for column in 0..P {
        let pivot = matrix[column];
        for row in column + 1..P {
            let factor = matrix[row][column] / pivot[column];
            matrix[row].iter_mut().zip(pivot).for_each(|(entry, above)| *entry -= factor * above);
            right[row] -= factor * right[column];
        }
    }
    for row in (0..P).rev() {
        let known: f64 = (row + 1..P).map(|j| matrix[row][j] * right[j]).sum();
        right[row] = (right[row] - known) / matrix[row][row];
    }
}
