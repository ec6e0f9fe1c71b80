//! What a spoon or cup of something weighs, and how far that may be off.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Between, Density, Fraction, Mass, Volume};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "measure::spoon",
    source: "usda-household-weights",
    place: "household weights and measures",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "V", unit: "ml", from: 0.5, to: 2000.0 },
        Valid { symbol: "rho", unit: "g/ml", from: 0.1, to: 2.5 },
        Valid { symbol: "s", unit: "%", from: 0.0, to: 50.0 },
    ],
};

/// The entries of `data/spoons.toml`, as text.
pub const DATA: &str = include_str!("../../data/spoons.toml");

/// How heavy something is as it lies in a spoon or cup.
#[derive(Clone, Debug, PartialEq)]
pub struct InTheSpoon {
    /// The word for it.
    pub name: String,
    /// How it was filled.
    pub filled: String,
    /// Mass by volume, air between the grains included.
    pub density: Density,
    /// How far two people's spoons differ, either way.
    pub spread: Fraction,
    /// Where the figure comes from.
    pub origin: Origin,
}

static SPOONED: LazyLock<Vec<InTheSpoon>> = LazyLock::new(|| {
    entry::read(DATA, "spooned", |row| {
        Some(InTheSpoon {
            name: row.word("name")?,
            filled: row.word("filled")?,
            density: Density::grams_per_millilitre(row.number("grams_per_millilitre")?),
            spread: Fraction::percent(row.number("spread_percent")?),
            origin: row.origin()?,
        })
    })
});

/// Every food whose spoon weight is known.
#[must_use]
pub fn known() -> &'static [InTheSpoon] {
    &SPOONED
}

/// The food of that name.
#[must_use]
pub fn named(name: &str) -> Option<&'static InTheSpoon> {
    SPOONED.iter().find(|food| food.name == name)
}

/// Returns the mass between which a spooned volume lies.
///
/// ```text
/// m = rho · V · (1 ± s)
/// ```
///
/// | symbol | meaning                          | unit |
/// |--------|----------------------------------|------|
/// | `m`    | mass                             | g    |
/// | `rho`  | density as it lies in the spoon  | g/ml |
/// | `V`    | volume                           | ml   |
/// | `s`    | spread between two people's hand | –    |
///
/// Valid for kitchen volumes; the mass grows with the volume outside them too. The spread of spooned
/// powders is common practice without a source: give the mass first, the spoon as a courtesy.
///
/// ```
/// # use quantity::SpoonSystem;
/// use science::measure::spoon;
/// let flour = spoon::named("wheat flour").expect("known");
/// let cup = spoon::spooned(SpoonSystem::UsCustomary.cup(), flour.density, flour.spread);
/// assert_eq!(format!("{:.0} to {:.0} g", cup.from.as_grams(), cup.to.as_grams()), "106 to 144 g");
/// ```
#[must_use]
pub fn spooned(volume: Volume, density: Density, spread: Fraction) -> Between<Mass> {
    let mass = volume * density;
    Between { from: mass * spread.left(), to: mass * (1.0 + spread.as_ratio()) }
}
