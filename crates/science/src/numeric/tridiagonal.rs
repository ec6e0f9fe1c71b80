//! Solves a system of equations in which each unknown meets only its two neighbours.

use crate::{Equation, Standing};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "numeric::tridiagonal",
    source: "thomas-1949",
    place: "elimination for three diagonals; as in numerical-recipes-2007, section 2.4",
    standing: Standing::Published,
    valid: &[],
};

/// Solves the system in place: `right` holds the right side on entry and the unknowns on return.
///
/// ```text
/// lower[i]·x[i−1] + diagonal[i]·x[i] + upper[i]·x[i+1] = right[i],   i = 0 … n−1
/// ```
///
/// | symbol     | meaning                                        |
/// |------------|------------------------------------------------|
/// | `lower`    | factor of the unknown before; `lower[0]` is not read |
/// | `diagonal` | factor of the unknown itself                   |
/// | `upper`    | factor of the unknown after; the last is not read |
/// | `right`    | right side, then the unknowns                  |
/// | `work`     | room for the reduced upper diagonal            |
///
/// The number of unknowns is the length of the shortest slice; longer slices keep their rest
/// untouched. Exact but for rounding where the diagonal dominates (|b| ≥ |a| + |c|), which holds
/// for implicit conduction; without it the elimination may lose digits. A vanishing pivot gives
/// values that are not finite, never a panic. Thomas (1949); Press et al. (2007), section 2.4.
///
/// ```
/// # use science::numeric::tridiagonal;
/// // The second difference of x² is 2: −x[i−1] + 2 x[i] − x[i+1] = −2, edges 0 and 16 known.
/// let (lower, diagonal, upper) = ([-1.0; 3], [2.0; 3], [-1.0; 3]);
/// let mut x = [-2.0, -2.0, -2.0 + 16.0];
/// tridiagonal::solve(&lower, &diagonal, &upper, &mut x, &mut [0.0; 3]);
/// assert_eq!(x.map(|v| (v * 1e9).round() / 1e9), [1.0, 4.0, 9.0]);
/// ```
pub fn solve(lower: &[f64], diagonal: &[f64], upper: &[f64], right: &mut [f64], work: &mut [f64]) {
    let count = [lower.len(), diagonal.len(), upper.len(), right.len(), work.len()].into_iter().min().unwrap_or(0);
    if count == 0 {
        return;
    }
    let (lower, diagonal, upper) = (&lower[..count], &diagonal[..count], &upper[..count]);
    let (right, work) = (&mut right[..count], &mut work[..count]);
    let pivot = 1.0 / diagonal[0];
    work[0] = upper[0] * pivot;
    right[0] *= pivot;
    for i in 1..count {
        let pivot = 1.0 / (diagonal[i] - lower[i] * work[i - 1]);
        work[i] = upper[i] * pivot;
        right[i] = (right[i] - lower[i] * right[i - 1]) * pivot;
    }
    for i in (0..count - 1).rev() {
        right[i] -= work[i] * right[i + 1];
    }
}
