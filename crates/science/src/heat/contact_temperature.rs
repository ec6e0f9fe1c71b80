//! Temperature where two thick bodies touch.

use crate::{Equation, Standing, Valid};
use quantity::{Conductivity, Density, SpecificHeat, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::contact_temperature",
    source: "carslaw-jaeger-1959",
    place: "§2.15, two semi-infinite regions in contact",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "T₁", unit: "°C", from: -40.0, to: 300.0 },
        Valid { symbol: "T₂", unit: "°C", from: -40.0, to: 300.0 },
    ],
};

/// A body thick enough that its far side does not yet feel the contact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thick {
    /// Its temperature far from the contact.
    pub temperature: Temperature,
    /// Its conductivity.
    pub conductivity: Conductivity,
    /// Its density.
    pub density: Density,
    /// Its specific heat.
    pub heat: SpecificHeat,
}

impl Thick {
    /// The effusivity: how readily it gives heat on contact, in W s½/(m² K).
    fn effusivity(&self) -> f64 {
        let capacity = self.density.as_kilograms_per_cubic_metre() * self.heat.as_joules_per_kilogram_kelvin();
        (self.conductivity.as_watts_per_metre_kelvin() * capacity).sqrt()
    }
}

/// Returns the temperature that the touching faces of two bodies take at once and keep for a while.
///
/// ```text
/// T = (e₁·T₁ + e₂·T₂) / (e₁ + e₂),   e = √(k·ρ·c)
/// ```
///
/// | symbol | meaning                               | unit          |
/// |--------|---------------------------------------|---------------|
/// | `T`    | temperature of both faces             | °C            |
/// | `T₁`, `T₂` | temperatures of the bodies before | °C            |
/// | `e`    | effusivity                            | W s½/(m² K)   |
/// | `k`, `ρ`, `c` | conductivity, density, specific heat | W/(m K), kg/m³, J/(kg K) |
///
/// For a perfect contact, before either far side feels it, and without boiling; a pan that is heated
/// or thin differs soon. Carslaw & Jaeger (1959), §2.15.
///
/// ```
/// # use quantity::*;
/// # use science::heat::contact_temperature::{Thick, contact_temperature};
/// let thick = |t, k, rho, c| Thick {
///     temperature: Temperature::celsius(t),
///     conductivity: Conductivity::watts_per_metre_kelvin(k),
///     density: Density::kilograms_per_cubic_metre(rho),
///     heat: SpecificHeat::joules_per_kilogram_kelvin(c),
/// };
/// let face = contact_temperature(&thick(139.0, 50.0, 7850.0, 490.0), &thick(22.0, 0.31, 800.0, 2990.0));
/// assert_eq!(format!("{:.1} °C", face.as_celsius()), "132.2 °C");
/// ```
#[must_use]
pub fn contact_temperature(one: &Thick, other: &Thick) -> Temperature {
    let (e_1, e_2) = (one.effusivity(), other.effusivity());
    Temperature::celsius((e_1 * one.temperature.as_celsius() + e_2 * other.temperature.as_celsius()) / (e_1 + e_2))
}
