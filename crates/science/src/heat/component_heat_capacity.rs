//! Specific heat of a food component.

use super::component::{Component, parabola};
use crate::{Equation, Standing, Valid};
use quantity::{SpecificHeat, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::component_heat_capacity",
    source: "choi-okos-1986",
    place: "table of component properties, reprinted in the ASHRAE Handbook, Refrigeration, 2006, ch. 9",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: -40.0, to: 150.0 }],
};

/// Which constant term stands in the polynomial of liquid water.
///
/// The handbook's reprint has 4128.9, about one percent below steam-table values; the original paper
/// has 4176.2 above 0 °C and 4081.7 below.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum WaterConstant {
    /// 4176.2 J/(kg K) above 0 °C and 4081.7 below: within 0.2 % of the steam tables up to 99 °C.
    #[default]
    Original,
    /// 4128.9 J/(kg K) on both sides of 0 °C, as the handbook prints.
    Handbook,
}

const fn water(constant: WaterConstant, liquid_range: bool) -> [f64; 3] {
    match (constant, liquid_range) {
        (WaterConstant::Original, true) => [4176.2, -9.0864e-2, 5.4731e-3],
        (WaterConstant::Original, false) => [4081.7, -5.3062, 0.99516],
        (WaterConstant::Handbook, true) => [4128.9, -9.0864e-2, 5.4731e-3],
        (WaterConstant::Handbook, false) => [4128.9, -5.3062, 0.99516],
    }
}

const fn coefficients(component: Component, liquid_range: bool, constant: WaterConstant) -> [f64; 3] {
    match component {
        Component::Water => water(constant, liquid_range),
        Component::Protein => [2008.2, 1.2089, -1.3129e-3],
        Component::Fat => [1984.2, 1.4733, -4.8008e-3],
        Component::Carbohydrate => [1548.8, 1.9625, -5.9399e-3],
        Component::Fibre => [1845.9, 1.8306, -4.6509e-3],
        Component::Ash => [1092.6, 1.8896, -3.6817e-3],
        Component::Ice => [2062.3, 6.0769, 0.0],
    }
}

/// Returns the specific heat of a component; water by the chosen constant.
///
/// ```text
/// c_p = a + b·T + c·T²
/// ```
///
/// | symbol | meaning       | unit     |
/// |--------|---------------|----------|
/// | `c_p`  | specific heat | J/(kg K) |
/// | `T`    | temperature   | °C       |
///
/// | component    | a                | b          | c          |
/// |--------------|------------------|------------|------------|
/// | water ≥ 0 °C | 4176.2 or 4128.9 | -9.0864e-2 | 5.4731e-3  |
/// | water < 0 °C | 4081.7 or 4128.9 | -5.3062    | 0.99516    |
/// | protein      | 2008.2           | 1.2089     | -1.3129e-3 |
/// | fat          | 1984.2           | 1.4733     | -4.8008e-3 |
/// | carbohydrate | 1548.8           | 1.9625     | -5.9399e-3 |
/// | fibre        | 1845.9           | 1.8306     | -4.6509e-3 |
/// | ash          | 1092.6           | 1.8896     | -3.6817e-3 |
/// | ice          | 2062.3           | 6.0769     |            |
///
/// Valid for −40 °C ≤ T ≤ 150 °C; outside, the parabola simply goes on. Choi & Okos (1986).
///
/// ```
/// # use quantity::Temperature;
/// # use science::heat::{Component, WaterConstant, component_heat_capacity};
/// let room = Temperature::celsius(20.0);
/// let original = component_heat_capacity(Component::Water, room, WaterConstant::Original);
/// let handbook = component_heat_capacity(Component::Water, room, WaterConstant::Handbook);
/// assert_eq!(format!("{:.1}", original.as_joules_per_kilogram_kelvin()), "4176.6");
/// assert_eq!(format!("{:.1}", handbook.as_joules_per_kilogram_kelvin()), "4129.3");
/// ```
#[must_use]
pub fn component_heat_capacity(component: Component, temperature: Temperature, constant: WaterConstant) -> SpecificHeat {
    let t = temperature.as_celsius();
    SpecificHeat::joules_per_kilogram_kelvin(parabola(coefficients(component, t >= 0.0, constant), t))
}
