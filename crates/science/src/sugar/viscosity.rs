//! Viscosity of sugar syrup at any kitchen temperature.

use super::water_viscosity::water_viscosity;
use super::where_reached;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature, Viscosity};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::viscosity",
    source: "crc-handbook-sucrose",
    place: "form after Génotelle over the viscosity of water, constants fitted to the handbook's tables",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "B", unit: "%", from: 0.0, to: 70.0 }, Valid { symbol: "T", unit: "°C", from: 20.0, to: 100.0 }],
};

const LINEAR: f64 = 21.5644;
const SQUARE: f64 = 8.4594;
const WARMTH: f64 = 38.9953;
const POWER: f64 = 1.246_37;
const WARMTH_SQUARE: f64 = -0.219_23;

/// Returns the viscosity of a sucrose solution.
///
/// ```text
/// log₁₀(η/η_w) = 21.5644·N + 8.4594·N² + 38.9953·f·N^1.24637 − 0.21923·f²·N
/// N = B/(1900 − 18·B)      f = (30 − T)/(91 + T)
/// ```
///
/// | symbol | meaning            | unit |
/// |--------|--------------------|------|
/// | `η`    | viscosity          | Pa s |
/// | `η_w`  | that of water      | Pa s |
/// | `B`    | sucrose by mass    | %    |
/// | `T`    | temperature        | °C   |
///
/// Within 3 % of the handbook's tables for 10 to 65 % and 20 to 80 °C, within 5 % to 74 %; below 20 °C up to
/// 15 % off, where the tables themselves scatter. Above 100 % it has no meaning. Written as
/// [`super::genotelle`], but over the true viscosity of water, because the plain form drifts by 8 % in thin
/// hot syrups.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let syrup = science::sugar::viscosity::viscosity(Fraction::percent(60.0), Temperature::celsius(40.0));
/// assert_eq!(format!("{:.1} mPa s", syrup.as_millipascal_seconds()), "21.1 mPa s");
/// ```
#[must_use]
pub fn viscosity(sucrose: Fraction, at: Temperature) -> Viscosity {
    let (b, t) = (sucrose.as_percent(), at.as_celsius());
    let n = b / (1900.0 - 18.0 * b);
    let f = (30.0 - t) / (91.0 + t);
    let log = LINEAR * n + SQUARE * n * n + WARMTH * f * libm::pow(n.max(0.0), POWER) + WARMTH_SQUARE * f * f * n;
    water_viscosity(at) * libm::pow(10.0, log)
}

/// Returns the share of sucrose that gives a viscosity at a temperature, between 0 and 90 %.
///
/// A syrup thicker than about 230 mPa s at 20 °C is beyond saturation and will crystallise: see
/// [`super::solubility`].
///
/// ```
/// # use quantity::{Temperature, Viscosity};
/// let share = science::sugar::viscosity::sucrose(Viscosity::millipascal_seconds(200.0), Temperature::celsius(20.0));
/// assert_eq!(format!("{:.0} %", share.as_percent()), "66 %");
/// ```
#[must_use]
pub fn sucrose(wanted: Viscosity, at: Temperature) -> Fraction {
    Fraction::ratio(where_reached(wanted.as_pascal_seconds(), (0.0, 0.9), |w| {
        viscosity(Fraction::ratio(w), at).as_pascal_seconds()
    }))
}
