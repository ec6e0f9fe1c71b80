//! Boiling point of water under a pressure.

use super::saturation_pressure;
use super::saturation_pressure::pascals_per_kelvin;
use crate::{Equation, Standing, Valid};
use quantity::{Pressure, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::boiling_point",
    source: "iapws-sr1-86",
    place: "Eq. (1), solved for the temperature",
    standing: Standing::Published,
    valid: &[Valid { symbol: "P", unit: "kPa", from: 0.612, to: 22_063.0 }],
};

const STEPS: usize = 40;

/// Returns the temperature at which water boils.
///
/// ```text
/// p_sat(T) = P
/// ```
///
/// | symbol  | meaning             | unit |
/// |---------|---------------------|------|
/// | `p_sat` | saturation pressure | Pa   |
/// | `T`     | boiling point       | °C   |
/// | `P`     | pressure            | Pa   |
///
/// Solved by at most 40 Newton steps on ln p to 1e-9 K. Valid from the triple point's pressure to
/// the critical point's; outside, the last step's value is given, which means nothing.
/// IAPWS SR1-86(1992), Eq. (1).
///
/// ```
/// # use quantity::Length;
/// # use science::heat::{air_pressure, boiling_point};
/// let mountain = boiling_point(air_pressure(Length::metres(1500.0)));
/// assert_eq!(format!("{:.1} °C", mountain.as_celsius()), "95.0 °C");
/// ```
#[must_use]
pub fn boiling_point(pressure: Pressure) -> Temperature {
    let target = libm::log(pressure.as_pascals());
    let mut t = 100.0;
    for _ in 0..STEPS {
        let water = Temperature::celsius(t);
        let p = saturation_pressure(water).as_pascals();
        let step = (libm::log(p) - target) * p / pascals_per_kelvin(water);
        t = (t - step).clamp(-50.0, 373.946);
        if step.abs() <= 1e-9 {
            break;
        }
    }
    Temperature::celsius(t)
}
