//! Viscosity of water.

use crate::{Equation, Standing, Valid};
use quantity::{Temperature, Viscosity};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::water_viscosity",
    source: "iapws-sr6-08",
    place: "viscosity of liquid water at 0.1 MPa",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: -20.0, to: 110.0 }],
};

/// Factor in µPa s and exponent.
const TERMS: [(f64, f64); 4] = [(280.68, -1.9), (511.45, -7.7), (61.131, -19.6), (0.459_03, -40.0)];

/// Returns the viscosity of water at 0.1 MPa.
///
/// ```text
/// η = Σ a_i · (T/300 K)^b_i
/// ```
///
/// | symbol | meaning     | value                            | unit  |
/// |--------|-------------|----------------------------------|-------|
/// | `η`    | viscosity   |                                  | µPa s |
/// | `T`    | temperature |                                  | K     |
/// | `a`    | fitted      | 280.68, 511.45, 61.131, 0.45903  | µPa s |
/// | `b`    | fitted      | −1.9, −7.7, −19.6, −40           | –     |
///
/// Valid for −20 to 110 °C, within 0.3 %; grows without bound towards absolute zero. IAPWS SR6-08, from memory.
///
/// ```
/// # use quantity::Temperature;
/// let water = science::sugar::water_viscosity::water_viscosity(Temperature::celsius(20.0));
/// assert_eq!(format!("{:.3} mPa s", water.as_millipascal_seconds()), "1.002 mPa s");
/// ```
#[must_use]
pub fn water_viscosity(at: Temperature) -> Viscosity {
    let t = at.as_kelvins() / 300.0;
    Viscosity::pascal_seconds(1.0e-6 * TERMS.iter().map(|(a, b)| a * libm::pow(t, *b)).sum::<f64>())
}
