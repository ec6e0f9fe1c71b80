//! Which samples differ when all pairs are compared at once.

use crate::{Equation, Standing, Valid};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::all_pairs",
    source: "newell-macfarlane-1987",
    place: "Table 1, 5 %",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "n", unit: "tasters", from: 3.0, to: 100.0 },
        Valid { symbol: "k", unit: "samples", from: 3.0, to: 6.0 },
    ],
};

/// The studentized range at 5 % and infinitely many degrees of freedom, for 3 to 6 samples.
const RANGE: [f64; 4] = [3.314, 3.633, 3.858, 4.030];

/// Returns the difference of rank sums from which on two samples differ at 5 %, all pairs judged together.
///
/// ```text
/// d = ⌈q · √(n·k·(k+1)/12)⌉
/// ```
///
/// | symbol | meaning                              | unit |
/// |--------|--------------------------------------|------|
/// | `d`    | least significant difference         | –    |
/// | `q`    | studentized range, 5 %, infinite     | –    |
/// | `n`    | tasters                              | –    |
/// | `k`    | samples                              | –    |
///
/// Known for 3 to 6 samples; none outside. Stricter than pair by pair, as it should be when the pairs were
/// not chosen beforehand. Newell & MacFarlane (1987), Table 1.
///
/// ```
/// assert_eq!(science::sensory::all_pairs::least_difference(8, 4), Some(14.0));
/// ```
#[must_use]
pub fn least_difference(tasters: usize, samples: usize) -> Option<f64> {
    let range = RANGE.get(samples.checked_sub(3)?)?;
    let (n, k) = (tasters as f64, samples as f64);
    Some((range * (n * k * (k + 1.0) / 12.0).sqrt()).ceil())
}
