//! Density of a food from its composition and pores.

use super::component::Composition;
use super::component_density;
use crate::{Equation, Standing, Valid};
use quantity::{Density, Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::mixture_density",
    source: "ashrae-2006",
    place: "ch. 9, density",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: -40.0, to: 150.0 }, Valid { symbol: "ε", unit: "–", from: 0.0, to: 0.95 }],
};

/// Returns the density of a food whose pores take up a share of its volume.
///
/// ```text
/// ρ = (1 − ε) / Σ (x_i / ρ_i)
/// ```
///
/// | symbol | meaning                         | unit  |
/// |--------|---------------------------------|-------|
/// | `ρ`    | density                         | kg/m³ |
/// | `ε`    | porosity, a share of the volume | –     |
/// | `x_i`  | mass fraction of a component    | –     |
/// | `ρ_i`  | its density                     | kg/m³ |
///
/// Volumes are taken as additive, which is 0.7 % low for milk. Valid for −40 °C ≤ T ≤ 150 °C and
/// ε < 1; outside, the formula still answers. ASHRAE Handbook, Refrigeration (2006), ch. 9.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::heat::{Composition, mixture_density};
/// let water = Composition { water: Fraction::WHOLE, ..Composition::default() };
/// let foam = mixture_density(&water, Temperature::celsius(20.0), Fraction::percent(50.0));
/// assert_eq!(format!("{:.2}", foam.as_kilograms_per_cubic_metre()), "497.87");
/// ```
#[must_use]
pub fn mixture_density(food: &Composition, temperature: Temperature, porosity: Fraction) -> Density {
    let volume: f64 =
        food.parts().map(|(part, share)| share / component_density(part, temperature).as_kilograms_per_cubic_metre()).sum();
    Density::kilograms_per_cubic_metre((1.0 - porosity.as_ratio()) / volume)
}
