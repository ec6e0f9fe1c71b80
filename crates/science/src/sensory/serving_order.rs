//! In which order samples are served, so that place and neighbour favour none.

use crate::{Equation, Standing, Valid};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::serving_order",
    source: "williams-1949",
    place: "designs balanced for the effects of the preceding treatment",
    standing: Standing::Published,
    valid: &[Valid { symbol: "p", unit: "samples", from: 2.0, to: 26.0 }],
};

/// The six orders of a triangle test, once each for every six tasters. ISO 4120.
pub const TRIANGLE: [&str; 6] = ["AAB", "ABA", "BAA", "BBA", "BAB", "ABB"];

/// Samples are ordered up to this many.
const MOST_SAMPLES: usize = 26;

/// Returns the rows of a Williams design, samples counted from 1; one row a taster, then from the top again.
///
/// ```text
/// first row 1, 2, p, 3, p−1, …     every next row one more, after p comes 1
/// odd p: the same rows mirrored follow
/// ```
///
/// | symbol | meaning           | unit |
/// |--------|-------------------|------|
/// | `p`    | number of samples | –    |
///
/// Every sample stands equally often in each place and after each other. Empty for fewer than two or more than
/// 26 samples. Williams (1949).
///
/// ```
/// let rows = science::sensory::serving_order::williams(4);
/// assert_eq!(rows[0], [1, 2, 4, 3]);
/// ```
#[must_use]
pub fn williams(samples: usize) -> Vec<Vec<usize>> {
    if !(2..=MOST_SAMPLES).contains(&samples) {
        return Vec::new();
    }
    let first: Vec<usize> =
        (0..samples).map(|place| if place % 2 == 1 { place.div_ceil(2) } else { (samples - place / 2) % samples }).collect();
    let mut rows: Vec<Vec<usize>> =
        (0..samples).map(|shift| first.iter().map(|sample| (sample + shift) % samples + 1).collect()).collect();
    if samples % 2 == 1 {
        let mirrored: Vec<Vec<usize>> = rows.iter().map(|row| row.iter().rev().copied().collect()).collect();
        rows.extend(mirrored);
    }
    rows
}

/// Returns whether a panel of that size uses each row equally often: a multiple of `p` (even) or `2p` (odd).
///
/// ```
/// assert!(science::sensory::serving_order::is_balanced(12, 4));
/// assert!(!science::sensory::serving_order::is_balanced(9, 3));
/// ```
#[must_use]
pub fn is_balanced(tasters: usize, samples: usize) -> bool {
    let rows = williams(samples).len();
    rows > 0 && tasters > 0 && tasters.is_multiple_of(rows)
}
