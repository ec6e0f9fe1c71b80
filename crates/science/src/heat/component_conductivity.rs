//! Thermal conductivity of a food component.

use super::component::{Component, parabola};
use crate::{Equation, Standing, Valid};
use quantity::{Conductivity, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::component_conductivity",
    source: "choi-okos-1986",
    place: "table of component properties, reprinted in the ASHRAE Handbook, Refrigeration, 2006, ch. 9",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: -40.0, to: 150.0 }],
};

const fn coefficients(component: Component) -> [f64; 3] {
    match component {
        Component::Water => [0.57109, 1.7625e-3, -6.7036e-6],
        Component::Protein => [0.17881, 1.1958e-3, -2.7178e-6],
        Component::Fat => [0.18071, -2.7604e-4, -1.7749e-7],
        Component::Carbohydrate => [0.20141, 1.3874e-3, -4.3312e-6],
        Component::Fibre => [0.18331, 1.2497e-3, -3.1683e-6],
        Component::Ash => [0.32962, 1.4011e-3, -2.9069e-6],
        Component::Ice => [2.2196, -6.2489e-3, 1.0154e-4],
    }
}

/// Returns the thermal conductivity of a component.
///
/// ```text
/// k = a + b·T + c·T²
/// ```
///
/// | symbol | meaning      | unit    |
/// |--------|--------------|---------|
/// | `k`    | conductivity | W/(m K) |
/// | `T`    | temperature  | °C      |
///
/// | component    | a       | b          | c          |
/// |--------------|---------|------------|------------|
/// | water        | 0.57109 | 1.7625e-3  | -6.7036e-6 |
/// | protein      | 0.17881 | 1.1958e-3  | -2.7178e-6 |
/// | fat          | 0.18071 | -2.7604e-4 | -1.7749e-7 |
/// | carbohydrate | 0.20141 | 1.3874e-3  | -4.3312e-6 |
/// | fibre        | 0.18331 | 1.2497e-3  | -3.1683e-6 |
/// | ash          | 0.32962 | 1.4011e-3  | -2.9069e-6 |
/// | ice          | 2.2196  | -6.2489e-3 | 1.0154e-4  |
///
/// Copies are about with misprints (fat rising with temperature, fat and carbohydrate ten times too
/// steep, water 0.457); the reference refuses them. Valid for −40 °C ≤ T ≤ 150 °C; outside, the
/// parabola simply goes on. Choi & Okos (1986).
///
/// ```
/// # use quantity::Temperature;
/// # use science::heat::{Component, component_conductivity};
/// let fat = component_conductivity(Component::Fat, Temperature::celsius(20.0));
/// assert_eq!(format!("{:.4}", fat.as_watts_per_metre_kelvin()), "0.1751");
/// ```
#[must_use]
pub fn component_conductivity(component: Component, temperature: Temperature) -> Conductivity {
    Conductivity::watts_per_metre_kelvin(parabola(coefficients(component), temperature.as_celsius()))
}
