//! The sugar trade's short formula for density, kept to show how far it strays when hot.

use crate::{Equation, Standing, Valid};
use quantity::{Density, Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::trade_density",
    source: "bubnik-1995",
    place: "short form, from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "B", unit: "%", from: 0.0, to: 70.0 }, Valid { symbol: "T", unit: "°C", from: 10.0, to: 30.0 }],
};

/// Returns the density of sugar juice by the trade's short formula.
///
/// ```text
/// ρ = 1000 · (1 + B·(B + 200)/54000) · (1 − 0.036·(T − 20)/(160 + T))
/// ```
///
/// | symbol | meaning         | unit  |
/// |--------|-----------------|-------|
/// | `ρ`    | density         | kg/m³ |
/// | `B`    | sucrose by mass | %     |
/// | `T`    | temperature     | °C    |
///
/// Within 0.2 % near 20 °C. Hot it comes out too dense, water itself by 2 % at 80 °C: use
/// [`super::warm_density`]. At −160 °C it has no value. Bubnik et al. (1995), from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let juice = science::sugar::trade_density::density(Fraction::percent(60.0), Temperature::celsius(80.0));
/// assert_eq!(format!("{:.1} kg/m³", juice.as_kilograms_per_cubic_metre()), "1277.3 kg/m³");
/// ```
#[must_use]
pub fn density(sucrose: Fraction, at: Temperature) -> Density {
    let (b, t) = (sucrose.as_percent(), at.as_celsius());
    let cold = 1000.0 * (1.0 + b * (b + 200.0) / 54_000.0);
    Density::kilograms_per_cubic_metre(cold * (1.0 - 0.036 * (t - 20.0) / (160.0 + t)))
}
