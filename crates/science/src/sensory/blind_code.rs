//! Three-digit codes that say nothing of what is in the cup.

use crate::{Equation, Standing, Valid};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sensory::blind_code",
    source: "steele-2014",
    place: "SplitMix, Figure 17; three-digit codes are a custom of tasting rooms",
    standing: Standing::Published,
    valid: &[Valid { symbol: "count", unit: "codes", from: 1.0, to: 891.0 }],
};

/// A small random generator with the same numbers on every machine: SplitMix64.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chance {
    state: u64,
}

impl Chance {
    /// A generator that gives the same numbers for the same seed.
    #[must_use]
    pub const fn seeded(seed: u64) -> Self {
        Self { state: seed }
    }

    /// The next 64 random bits.
    pub const fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.state ^ (self.state >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below a limit, every one equally likely to within 2⁻⁵⁴ for limits below a thousand.
    pub const fn below(&mut self, limit: usize) -> usize {
        ((self.bits() as u128 * limit as u128) >> 64) as usize
    }

    /// Puts things into a random order.
    pub fn shuffle<T>(&mut self, things: &mut [T]) {
        for last in (1..things.len()).rev() {
            let other = self.below(last + 1);
            things.swap(last, other);
        }
    }
}

/// Returns that many different codes from 100 to 999, none with three equal digits, or none if there are not
/// so many.
///
/// ```text
/// shuffle(100 … 999 without 111, 222 …) from the seed, the first `count` of them
/// ```
///
/// | symbol  | meaning        | unit |
/// |---------|----------------|------|
/// | `count` | how many codes | –    |
///
/// The same seed gives the same codes on every machine. SplitMix64: Steele, Lea & Flood (2014).
///
/// ```
/// let codes = science::sensory::blind_code::codes(7, 4).expect("enough codes");
/// assert_eq!(codes.len(), 4);
/// ```
#[must_use]
pub fn codes(seed: u64, count: usize) -> Option<Vec<u16>> {
    let mut all: Vec<u16> = (100..1000).filter(|code| code % 111 != 0).collect();
    Chance::seeded(seed).shuffle(&mut all);
    (count <= all.len()).then(|| {
        all.truncate(count);
        all
    })
}
