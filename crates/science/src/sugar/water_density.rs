//! Density of water.

use crate::{Equation, Standing, Valid};
use quantity::{Density, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::water_density",
    source: "kell-1975",
    place: "Eq. (16), from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.0, to: 150.0 }],
};

const ABOVE: [f64; 6] = [999.839_52, 16.945_176, -7.987_040_1e-3, -46.170_461e-6, 105.563_02e-9, -280.542_53e-12];
const BELOW: f64 = 16.879_85e-3;

/// Returns the density of water at air pressure.
///
/// ```text
/// ρ = (999.83952 + 16.945176·T − 7.9870401e-3·T² − 46.170461e-6·T³ + 105.56302e-9·T⁴ − 280.54253e-12·T⁵)
///     / (1 + 16.87985e-3·T)
/// ```
///
/// | symbol | meaning     | unit  |
/// |--------|-------------|-------|
/// | `ρ`    | density     | kg/m³ |
/// | `T`    | temperature | °C    |
///
/// Valid for 0 to 150 °C, within 0.01 %; at −59.2 °C it has no value. Kell (1975), from memory.
///
/// ```
/// # use quantity::Temperature;
/// let water = science::sugar::water_density::water_density(Temperature::celsius(20.0));
/// assert_eq!(format!("{:.2} kg/m³", water.as_kilograms_per_cubic_metre()), "998.20 kg/m³");
/// ```
#[must_use]
pub fn water_density(at: Temperature) -> Density {
    let t = at.as_celsius();
    let above = ABOVE.iter().rev().fold(0.0, |sum, coefficient| sum * t + coefficient);
    Density::kilograms_per_cubic_metre(above / (1.0 + BELOW * t))
}
