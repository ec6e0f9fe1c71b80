//! The least water activity at which what spoils food still grows.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::growth_limits",
    source: "icmsf-5-1996",
    place: "minimum water activities for growth",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "a_w", unit: "–", from: 0.55, to: 1.0 }],
};

/// The entries of `data/growth_limits.toml`, as text.
pub const DATA: &str = include_str!("../../data/growth_limits.toml");

/// What grows, and from which water activity on.
#[derive(Clone, Debug, PartialEq)]
pub struct GrowthLimit {
    /// The organism or group.
    pub organism: String,
    /// The least water activity for growth when all else suits it, as handbooks print it.
    pub least: Fraction,
    /// The same as other sources have it, lowest to highest.
    pub reported: Between<Fraction>,
    /// Where the figure comes from.
    pub origin: Origin,
}

static LIMITS: LazyLock<Vec<GrowthLimit>> = LazyLock::new(|| {
    entry::read(DATA, "limit", |row| {
        let activity = |key| row.number(key).map(Fraction::ratio);
        Some(GrowthLimit {
            organism: row.word("organism")?,
            least: activity("least_water_activity")?,
            reported: Between { from: activity("lowest")?, to: activity("highest")? },
            origin: row.origin()?,
        })
    })
});

/// Every limit, the thirstiest organism first.
#[must_use]
pub fn all() -> &'static [GrowthLimit] {
    &LIMITS
}

/// Returns what may grow at this water activity when warmth and sourness suit it, by the lowest limit reported.
///
/// ```text
/// a_w ≥ a_min
/// ```
///
/// | symbol  | meaning                                  | unit |
/// |---------|------------------------------------------|------|
/// | `a_w`   | water activity                           | –    |
/// | `a_min` | the lowest reported activity for growth  | –    |
///
/// Sources part: *Staphylococcus aureus* is given 0.83, 0.85 and 0.86. Not growing is not dying: what is there stays.
///
/// ```
/// # use quantity::{Between, Fraction};
/// let jam = science::keeping::growth_limits::able_to_grow(Fraction::ratio(0.82));
/// assert!(jam.iter().any(|limit| limit.organism == "most moulds"));
/// assert!(!jam.iter().any(|limit| limit.organism == "Staphylococcus aureus"));
/// ```
#[must_use]
pub fn able_to_grow(water_activity: Fraction) -> Vec<&'static GrowthLimit> {
    LIMITS.iter().filter(|limit| water_activity >= limit.reported.from).collect()
}
