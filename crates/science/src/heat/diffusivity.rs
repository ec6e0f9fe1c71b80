//! Thermal diffusivity: how fast a temperature spreads.

use crate::{Equation, Standing};
use quantity::{Conductivity, Density, Diffusivity, SpecificHeat};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::diffusivity",
    source: "carslaw-jaeger-1959",
    place: "§1.6, definition",
    standing: Standing::Published,
    valid: &[],
};

/// Returns the thermal diffusivity.
///
/// ```text
/// α = k / (ρ·c_p)
/// ```
///
/// | symbol | meaning       | unit     |
/// |--------|---------------|----------|
/// | `α`    | diffusivity   | m²/s     |
/// | `k`    | conductivity  | W/(m K)  |
/// | `ρ`    | density       | kg/m³    |
/// | `c_p`  | specific heat | J/(kg K) |
///
/// A definition, valid everywhere. The separate polynomials for the diffusivity of components differ
/// from it by up to 3 % and are not used. Carslaw & Jaeger (1959), §1.6.
///
/// ```
/// # use quantity::{Conductivity, Density, SpecificHeat};
/// let alpha = science::heat::diffusivity(
///     Conductivity::watts_per_metre_kelvin(0.31),
///     Density::kilograms_per_cubic_metre(800.0),
///     SpecificHeat::joules_per_kilogram_kelvin(2990.0),
/// );
/// assert_eq!(format!("{:.3e} m²/s", alpha.as_square_metres_per_second()), "1.296e-7 m²/s");
/// ```
#[must_use]
pub fn diffusivity(conductivity: Conductivity, density: Density, heat: SpecificHeat) -> Diffusivity {
    Diffusivity::square_metres_per_second(
        conductivity.as_watts_per_metre_kelvin()
            / (density.as_kilograms_per_cubic_metre() * heat.as_joules_per_kilogram_kelvin()),
    )
}
