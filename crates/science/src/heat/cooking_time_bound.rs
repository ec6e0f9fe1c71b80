//! The shortest time in which a cook can possibly be done, by the heat it needs.

use crate::{Equation, Standing};
use quantity::{Density, HeatFlux, Length, SpecificHeat, TemperatureDifference, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::cooking_time_bound",
    source: "carslaw-jaeger-1959",
    place: "§1.6, conservation of heat",
    standing: Standing::Published,
    valid: &[],
};

/// What has to be warmed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Thickness of the whole piece.
    pub thickness: Length,
    /// Its density.
    pub density: Density,
    /// Its specific heat.
    pub heat: SpecificHeat,
    /// How much warmer it has to become throughout.
    pub rise: TemperatureDifference,
}

/// Returns the time that a flux of heat needs to warm a piece, nothing lost: both sides in total.
///
/// ```text
/// t = ρ·c·L·ΔT / q
/// ```
///
/// | symbol | meaning              | unit     |
/// |--------|----------------------|----------|
/// | `t`    | time                 | s        |
/// | `ρ`    | density              | kg/m³    |
/// | `c`    | specific heat        | J/(kg K) |
/// | `L`    | thickness            | m        |
/// | `ΔT`   | rise of temperature  | K        |
/// | `q`    | heat flux            | W/m²     |
///
/// A lower bound from the conservation of energy, valid always: whoever promises less has made a
/// mistake. Evaporation only adds to it.
///
/// ```
/// # use quantity::*;
/// # use science::heat::cooking_time_bound::{Load, cooking_time_bound};
/// let cake = Load {
///     thickness: Length::millimetres(12.0),
///     density: Density::kilograms_per_cubic_metre(800.0),
///     heat: SpecificHeat::joules_per_kilogram_kelvin(2990.0),
///     rise: TemperatureDifference::kelvins(68.0),
/// };
/// let least = cooking_time_bound(&cake, HeatFlux::watts_per_square_metre(10_200.0));
/// assert_eq!(format!("{:.0} s", least.as_seconds()), "191 s");
/// ```
#[must_use]
pub fn cooking_time_bound(load: &Load, flux: HeatFlux) -> TimeSpan {
    let capacity = load.density.as_kilograms_per_cubic_metre() * load.heat.as_joules_per_kilogram_kelvin();
    let energy = capacity * load.thickness.as_metres() * load.rise.as_kelvins();
    TimeSpan::seconds(energy / flux.as_watts_per_square_metre())
}
