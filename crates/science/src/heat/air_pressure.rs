//! Pressure of the air at an altitude.

use crate::{Equation, Standing, Valid};
use quantity::{Length, Pressure};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::air_pressure",
    source: "iso-2533-1975",
    place: "pressure in the layer below 11 km, constants from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "h", unit: "m", from: -500.0, to: 11_000.0 }],
};

/// The pressure of the standard atmosphere at sea level.
pub const SEA_LEVEL: Pressure = Pressure::pascals(101_325.0);

/// Returns the pressure of the standard atmosphere.
///
/// ```text
/// P = P₀·(1 − 2.25577e-5·h)^5.25588
/// ```
///
/// | symbol | meaning          | value  | unit |
/// |--------|------------------|--------|------|
/// | `P`    | pressure         |        | Pa   |
/// | `P₀`   | at sea level     | 101325 | Pa   |
/// | `h`    | altitude         |        | m    |
///
/// Weather moves the true pressure by some 3 %, which is 0.8 K of boiling point. Valid for
/// −500 m ≤ h ≤ 11 km; from 44 km on the formula knows no air and answers zero.
/// ISO 2533:1975, constants from memory.
///
/// ```
/// # use quantity::Length;
/// let pressure = science::heat::air_pressure(Length::metres(2000.0));
/// assert_eq!(format!("{:.1} kPa", pressure.as_kilopascals()), "79.5 kPa");
/// ```
#[must_use]
pub fn air_pressure(altitude: Length) -> Pressure {
    SEA_LEVEL * libm::pow((1.0 - 2.255_77e-5 * altitude.as_metres()).max(0.0), 5.255_88)
}
