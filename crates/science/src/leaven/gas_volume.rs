//! How much room carbon dioxide takes.

use super::CARBON_DIOXIDE_MOLAR_MASS;
use crate::{Equation, Standing, Valid};
use quantity::{Mass, Pressure, Temperature, Volume};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "leaven::gas_volume",
    source: "codata-2018",
    place: "molar gas constant; ideal gas",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "m", unit: "g", from: 0.0, to: 100_000.0 },
        Valid { symbol: "T", unit: "°C", from: 0.0, to: 100.0 },
        Valid { symbol: "P", unit: "kPa", from: 50.0, to: 110.0 },
    ],
};

/// The molar gas constant, J/(mol K), CODATA 2018, exact.
const GAS_CONSTANT: f64 = 8.314_462_618;

/// Returns the volume of a mass of carbon dioxide.
///
/// ```text
/// V = m · R · T / (M · P)
/// ```
///
/// | symbol | meaning              | value         | unit      |
/// |--------|----------------------|---------------|-----------|
/// | `V`    | volume               |               | m³        |
/// | `m`    | carbon dioxide       |               | g         |
/// | `T`    | absolute temperature |               | K         |
/// | `P`    | pressure             |               | Pa        |
/// | `R`    | gas constant         | 8.314 462 618 | J/(mol K) |
/// | `M`    | molar mass           | 44.010        | g/mol     |
///
/// Valid for 0 to 100 °C and 50 to 110 kPa, where real carbon dioxide takes up to 0.7 % less room.
/// Outside, the ideal gas answers; at no pressure the volume is infinite.
///
/// ```
/// # use quantity::{Mass, Pressure, Temperature};
/// let air = Pressure::kilopascals(101.325);
/// let volume = science::leaven::gas_volume::volume(Mass::grams(1.0), Temperature::celsius(20.0), air);
/// assert_eq!(format!("{:.1} ml", volume.as_millilitres()), "546.6 ml");
/// ```
#[must_use]
pub fn volume(carbon_dioxide: Mass, at: Temperature, pressure: Pressure) -> Volume {
    let moles = carbon_dioxide.as_grams() / CARBON_DIOXIDE_MOLAR_MASS;
    Volume::cubic_metres(moles * GAS_CONSTANT * at.as_kelvins() / pressure.as_pascals())
}
