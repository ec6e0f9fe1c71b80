//! How fast a bread crust darkens, by its temperature and water activity.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Rate, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::crust_lightness",
    source: "purlis-salvadori-2009",
    place: "first-order rate of lightness, constants from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 120.0, to: 220.0 }, Valid { symbol: "a_w", unit: "–", from: 0.05, to: 0.6 }],
};

/// Returns the rate at which the lightness of a bread crust falls.
///
/// ```text
/// dL/dt = −k·L,   k[1/min] = (7.9233e6 + 2.7397e6/a_w)·exp(−(8.7015e3 + 49.4738/a_w) / T)
/// ```
///
/// | symbol | meaning                    | unit  |
/// |--------|----------------------------|-------|
/// | `L`    | lightness, CIE             | –     |
/// | `k`    | rate                       | 1/min |
/// | `a_w`  | water activity of the crust | –    |
/// | `T`    | temperature of the crust   | K     |
///
/// Browning is seen above 120 °C and at low water activity only; outside, the formula still answers,
/// not a number at no water activity. Purlis & Salvadori (2009), constants from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let rate = science::heat::crust_lightness(Temperature::celsius(180.0), Fraction::ratio(0.3));
/// assert_eq!(format!("{:.3} 1/min", rate.as_per_minute()), "0.054 1/min");
/// ```
#[must_use]
pub fn crust_lightness(crust: Temperature, water_activity: Fraction) -> Rate {
    let a_w = water_activity.as_ratio();
    let exponent = -(8.7015e3 + 49.4738 / a_w) / crust.as_kelvins();
    Rate::per_minute((7.9233e6 + 2.7397e6 / a_w) * libm::exp(exponent))
}
