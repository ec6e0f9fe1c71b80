//! The sugar boiler's stages, from thread to hard crack.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction, Length, Temperature, TemperatureDifference};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::stage",
    source: "sugar-stages",
    place: "table of stages at sea level; 1 K lower for every 300 m",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 106.0, to: 160.0 }, Valid { symbol: "h", unit: "m", from: 0.0, to: 3000.0 }],
};

/// The entries of `data/sugar_stages.toml`, as text.
pub const DATA: &str = include_str!("../../data/sugar_stages.toml");

/// Metres for every kelvin that syrup boils lower.
const METRES_PER_KELVIN: f64 = 300.0;

/// A stage of boiled sugar.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// Its name.
    pub name: String,
    /// Boiling temperatures at sea level.
    pub boils: Between<Temperature>,
    /// How much of it is sugar then.
    pub sugar: Fraction,
    /// Where the figures come from.
    pub origin: Origin,
}

static STAGES: LazyLock<Vec<Stage>> = LazyLock::new(|| {
    entry::read(DATA, "stage", |row| {
        let celsius = |key| row.number(key).map(Temperature::celsius);
        Some(Stage {
            name: row.word("name")?,
            boils: Between { from: celsius("from_celsius")?, to: celsius("to_celsius")? },
            sugar: Fraction::percent(row.number("sugar_percent")?),
            origin: row.origin()?,
        })
    })
});

/// Every stage, the softest first.
#[must_use]
pub fn all() -> &'static [Stage] {
    &STAGES
}

/// Returns the stage of a syrup that boils at a temperature at some altitude, or none between stages.
///
/// ```text
/// T_sea = T + h/300 m · 1 K
/// ```
///
/// | symbol | meaning                | unit |
/// |--------|------------------------|------|
/// | `T`    | boiling temperature    | °C   |
/// | `h`    | altitude               | m    |
///
/// A table of the trade; between two stages it names none. Hot sugar burns: keep children off.
///
/// ```
/// # use quantity::{Length, Temperature};
/// let stage = science::sugar::stage::at(Temperature::celsius(120.0), Length::metres(0.0));
/// assert_eq!(stage.map(|stage| stage.name.as_str()), Some("firm ball"));
/// ```
#[must_use]
pub fn at(boils: Temperature, altitude: Length) -> Option<&'static Stage> {
    let at_sea = boils + TemperatureDifference::kelvins(altitude.as_metres() / METRES_PER_KELVIN);
    STAGES.iter().find(|stage| at_sea >= stage.boils.from && at_sea <= stage.boils.to)
}
