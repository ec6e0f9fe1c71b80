//! Finds where a function crosses zero between two bounds.

use crate::{Equation, Standing};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "numeric::root",
    source: "brent-1973",
    place: "chapter 4, algorithm zero",
    standing: Standing::Published,
    valid: &[],
};

/// Finds a place between `low` and `high` at which the function is zero, or nothing where its signs
/// at both ends agree or it is not finite there.
///
/// ```text
/// s = inverse quadratic through the last three places, else the secant, else the middle;
/// the middle is taken whenever the faster guess leaves the bracket or shrinks it too slowly
/// ```
///
/// | symbol        | meaning                                        |
/// |---------------|------------------------------------------------|
/// | `low`, `high` | the bracket                                    |
/// | `within`      | width of the bracket at which to stop          |
///
/// The bracket never grows and at most 200 evaluations are spent. Order about 1.6 near a simple
/// zero. Brent (1973), chapter 4.
///
/// ```
/// # use science::numeric::root;
/// let two = root::find(|x| x * x - 2.0, (0.0, 2.0), 1e-12);
/// assert!((two.expect("the signs differ") - 2.0_f64.sqrt()).abs() < 1e-12);
/// assert_eq!(root::find(|x| x * x + 1.0, (0.0, 2.0), 1e-12), None);
/// ```
pub fn find(function: impl Fn(f64) -> f64, (low, high): (f64, f64), within: f64) -> Option<f64> {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (function(a), function(b));
    if !(fa.is_finite() && fb.is_finite()) || fa * fb > 0.0 {
        return None;
    }
    let (mut c, mut fc) = (a, fa);
    let (mut step, mut step_before) = (b - a, b - a);
    for _ in 0..200 {
        if fb * fc > 0.0 {
            (c, fc) = (a, fa);
            (step, step_before) = (b - a, b - a);
        }
        if fc.abs() < fb.abs() {
            (a, b, c) = (b, c, b);
            (fa, fb, fc) = (fb, fc, fb);
        }
        let tolerance = 2.0 * f64::EPSILON * b.abs() + 0.5 * within;
        let half = 0.5 * (c - b);
        if half.abs() <= tolerance || fb == 0.0 {
            return Some(b);
        }
        let guess = if step_before.abs() >= tolerance && fa.abs() > fb.abs() { guess((a, fa), (b, fb), (c, fc)) } else { None };
        match guess {
            Some(guess)
                if guess.abs() < (1.5 * half.abs() - 0.5 * tolerance).min(0.5 * step_before.abs()) && guess * half > 0.0 =>
            {
                (step_before, step) = (step, guess);
            }
            _ => (step_before, step) = (half, half),
        }
        (a, fa) = (b, fb);
        b += if step.abs() > tolerance { step } else { tolerance.copysign(half) };
        fb = function(b);
        if !fb.is_finite() {
            return None;
        }
    }
    Some(b)
}

/// The step from `b` that the secant or the inverse quadratic asks for.
fn guess((a, fa): (f64, f64), (b, fb): (f64, f64), (c, fc): (f64, f64)) -> Option<f64> {
    let s = fb / fa;
    let (p, q) = if a == c {
        ((c - b) * s, 1.0 - s)
    } else {
        let (q, r) = (fa / fc, fb / fc);
        (s * ((c - b) * q * (q - r) - (b - a) * (r - 1.0)), (q - 1.0) * (r - 1.0) * (s - 1.0))
    };
    let step = if p > 0.0 { p / -q } else { -p / q };
    step.is_finite().then_some(step)
}
