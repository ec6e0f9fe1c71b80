//! Water activity of dough and crumb from their moisture.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::flour_water_activity",
    source: "zhang-datta-2006",
    place: "sorption isotherm of bread after Lind & Rask, Oswin's form, constants from memory",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "X", unit: "kg/kg solids", from: 0.01, to: 1.5 },
        Valid { symbol: "T", unit: "°C", from: 20.0, to: 150.0 },
    ],
};

/// Oswin's exponent.
pub(super) const EXPONENT: f64 = 0.38;

/// ln of the moisture in percent of solids at a water activity of one half.
pub(super) fn half_moisture_logarithm(t: f64) -> f64 {
    5.5 - 0.0056 * (t + 273.15)
}

/// Returns the water activity of a flour food.
///
/// ```text
/// a_w = 1 / (1 + (100·X / e^(5.5 − 0.0056·T))^(−1/0.38))
/// ```
///
/// | symbol | meaning                      | unit         |
/// |--------|------------------------------|--------------|
/// | `a_w`  | water activity               | –            |
/// | `X`    | moisture: water over solids  | kg/kg        |
/// | `T`    | temperature                  | K            |
///
/// Sugar and salt are not in it; for a fresh crumb it reads some 0.1 low. Valid for 0.01 ≤ X ≤ 1.5 and 20 to 150 °C, as far as the source's
/// use in baking goes; outside, the formula still answers, zero for no moisture.
/// Zhang & Datta (2006), constants from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let crumb = science::heat::flour_water_activity(Fraction::ratio(0.85), Temperature::celsius(25.0));
/// assert_eq!(format!("{:.2}", crumb.as_ratio()), "0.83");
/// ```
#[must_use]
pub fn flour_water_activity(moisture: Fraction, temperature: Temperature) -> Fraction {
    let x = libm::log(moisture.as_percent().max(0.0));
    let ratio = libm::exp((half_moisture_logarithm(temperature.as_celsius()) - x) / EXPONENT);
    Fraction::ratio(1.0 / (1.0 + ratio))
}
