//! Density of warm and cold sugar syrup.

use super::density::density;
use super::water_density::water_density;
use crate::heat::{Component, component_density};
use crate::{Equation, Standing, Valid};
use quantity::{Density, Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::warm_density",
    source: "choi-okos-1986",
    place: "density of carbohydrate, with that of water, as the ratio to 20 °C",
    standing: Standing::Published,
    valid: &[Valid { symbol: "w", unit: "%", from: 0.0, to: 75.0 }, Valid { symbol: "T", unit: "°C", from: 0.0, to: 100.0 }],
};

/// Returns the density of a sucrose solution at any temperature.
///
/// ```text
/// ρ(w, T) = ρ_20(w) · v(w, 20 °C)/v(w, T)      v = (1 − w)/ρ_water + w/ρ_carbohydrate
/// ```
///
/// | symbol | meaning                                     | unit  |
/// |--------|---------------------------------------------|-------|
/// | `ρ_20` | density at 20 °C                            | kg/m³ |
/// | `w`    | sucrose by mass                             | –     |
/// | `v`    | specific volume of water and sugar together | m³/kg |
///
/// Valid for 0 to 75 % and 0 to 100 °C, within 0.2 % of the handbook up to 50 °C; continues outside.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let syrup = science::sugar::warm_density::warm_density(Fraction::percent(60.0), Temperature::celsius(80.0));
/// assert_eq!(format!("{:.2} g/ml", syrup.as_grams_per_millilitre()), "1.26 g/ml");
/// ```
#[must_use]
pub fn warm_density(sucrose: Fraction, at: Temperature) -> Density {
    let volume = |temperature: Temperature| {
        let sugar = component_density(Component::Carbohydrate, temperature);
        sucrose.left().as_ratio() / water_density(temperature).as_grams_per_millilitre()
            + sucrose.as_ratio() / sugar.as_grams_per_millilitre()
    };
    density(sucrose) * (volume(Temperature::celsius(20.0)) / volume(at))
}
