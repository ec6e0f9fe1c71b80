//! Finds where a function with one summit is highest between two bounds.

use crate::{Equation, Standing};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "numeric::maximum",
    source: "kiefer-1953",
    place: "golden section search; as in numerical-recipes-2007, section 10.2",
    standing: Standing::Published,
    valid: &[],
};

/// The share by which each look narrows the bracket.
const GOLDEN: f64 = 0.618_033_988_749_894_9;

/// Finds the place between `low` and `high` at which a function with a single summit is highest.
///
/// ```text
/// two places inside, the golden share φ from either end; the end beyond the lower one is cut off
/// ```
///
/// | symbol        | meaning                               |
/// |---------------|---------------------------------------|
/// | `low`, `high` | the bracket                           |
/// | `within`      | width of the bracket at which to stop |
/// | `φ`           | (√5 − 1)/2                            |
///
/// The bracket shrinks by φ at each evaluation, at most 200. A place cannot be told closer than
/// about the square root of the rounding. With several summits one of them is found; values that
/// are not finite count as low. Kiefer (1953).
///
/// ```
/// # use science::numeric::maximum;
/// let top = maximum::find(|x| 3.0 * x - x * x, (0.0, 4.0), 1e-7);
/// assert!((top - 1.5).abs() < 1e-6);
/// ```
pub fn find(function: impl Fn(f64) -> f64, (low, high): (f64, f64), within: f64) -> f64 {
    let (mut low, mut high) = (low, high);
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (function(left), function(right));
    for _ in 0..200 {
        if (high - low).abs() <= within {
            break;
        }
        if at_left > at_right || at_right.is_nan() {
            high = right;
            (right, at_right) = (left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = function(left);
        } else {
            low = left;
            (left, at_left) = (right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = function(right);
        }
    }
    0.5 * (low + high)
}
