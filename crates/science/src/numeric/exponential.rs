//! The exponential function, fast enough for the innermost loop of a long run.

use crate::{Equation, Standing, Valid};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "numeric::exponential",
    source: "cody-waite-1980",
    place: "reduction by multiples of ln 2 in two parts; the rest by its power series",
    standing: Standing::Published,
    valid: &[Valid { symbol: "x", unit: "–", from: -700.0, to: 700.0 }],
};

/// Returns e to a power, within two units of the last place and a few times faster than `libm`.
///
/// ```text
/// n = the integer nearest to x/ln 2,   r = x − n·ln 2
/// e^x = 2^n·(1 + r + r²/2! + … + r¹³/13!)
/// ```
///
/// | symbol | meaning                             |
/// |--------|-------------------------------------|
/// | `x`    | the power                           |
/// | `n`    | how often to double                 |
/// | `r`    | the rest, at most 0.347 in size     |
///
/// Only additions and multiplications: the same bits on every machine. Beyond ±700, and for what is
/// no number, `libm` answers. Cody & Waite (1980).
///
/// ```
/// # use science::numeric::exponential::exp;
/// assert!((exp(1.0) - std::f64::consts::E).abs() < 1e-15);
/// assert_eq!(exp(0.0), 1.0);
/// assert!(exp(f64::NAN).is_nan());
/// ```
#[inline]
#[must_use]
pub fn exp(x: f64) -> f64 {
    if !(-700.0..=700.0).contains(&x) {
        return libm::exp(x);
    }
    let shifted = x * std::f64::consts::LOG2_E + ROUNDING;
    let n = shifted - ROUNDING;
    let r = (x - n * LN_2_HIGH) - n * LN_2_LOW;
    let doubled = f64::from_bits(shifted.to_bits().wrapping_add(1023) << 52);
    doubled * series(r)
}

/// Adding it leaves an integer in the last places of the sum.
const ROUNDING: f64 = 6_755_399_441_055_744.0;
/// ln 2 with its last 21 places zero, so that its multiples are exact; and the rest of it.
const LN_2_HIGH: f64 = 6.931_471_803_691_238e-1;
const LN_2_LOW: f64 = 1.908_214_929_270_587_7e-10;

/// The power series in pairs of pairs, which a processor works on side by side.
#[inline]
fn series(r: f64) -> f64 {
    let (r2, r4) = (r * r, r * r * (r * r));
    let first = (1.0 + r) + r2 * (1.0 / 2.0 + r * (1.0 / 6.0));
    let second = (1.0 / 24.0 + r * (1.0 / 120.0)) + r2 * (1.0 / 720.0 + r * (1.0 / 5040.0));
    let third = (1.0 / 40_320.0 + r * (1.0 / 362_880.0)) + r2 * (1.0 / 3_628_800.0 + r * (1.0 / 39_916_800.0));
    let last = 1.0 / 479_001_600.0 + r * (1.0 / 6_227_020_800.0);
    first + r4 * (second + r4 * (third + r4 * last))
}
