//! Density of a food component.

use super::component::{Component, parabola};
use crate::{Equation, Standing, Valid};
use quantity::{Density, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::component_density",
    source: "choi-okos-1986",
    place: "table of component properties, reprinted in the ASHRAE Handbook, Refrigeration, 2006, ch. 9",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: -40.0, to: 150.0 }],
};

const fn coefficients(component: Component) -> [f64; 3] {
    match component {
        Component::Water => [997.18, 3.1439e-3, -3.7574e-3],
        Component::Protein => [1329.9, -0.5184, 0.0],
        Component::Fat => [925.59, -0.41757, 0.0],
        Component::Carbohydrate => [1599.1, -0.31046, 0.0],
        Component::Fibre => [1311.5, -0.36589, 0.0],
        Component::Ash => [2423.8, -0.28063, 0.0],
        Component::Ice => [916.89, -0.13071, 0.0],
    }
}

/// Returns the density of a component.
///
/// ```text
/// ρ = a + b·T + c·T²
/// ```
///
/// | symbol | meaning     | unit  |
/// |--------|-------------|-------|
/// | `ρ`    | density     | kg/m³ |
/// | `T`    | temperature | °C    |
///
/// | component    | a      | b          | c          |
/// |--------------|--------|------------|------------|
/// | water        | 997.18 | 3.1439e-3  | -3.7574e-3 |
/// | protein      | 1329.9 | -0.5184    |            |
/// | fat          | 925.59 | -0.41757   |            |
/// | carbohydrate | 1599.1 | -0.31046   |            |
/// | fibre        | 1311.5 | -0.36589   |            |
/// | ash          | 2423.8 | -0.28063   |            |
/// | ice          | 916.89 | -0.13071   |            |
///
/// Valid for −40 °C ≤ T ≤ 150 °C; outside, the parabola simply goes on. Choi & Okos (1986).
///
/// ```
/// # use quantity::Temperature;
/// # use science::heat::{Component, component_density};
/// let water = component_density(Component::Water, Temperature::celsius(20.0));
/// assert_eq!(format!("{:.2} kg/m³", water.as_kilograms_per_cubic_metre()), "995.74 kg/m³");
/// ```
#[must_use]
pub fn component_density(component: Component, temperature: Temperature) -> Density {
    Density::kilograms_per_cubic_metre(parabola(coefficients(component), temperature.as_celsius()))
}
