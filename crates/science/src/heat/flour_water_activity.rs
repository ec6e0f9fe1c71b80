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
        Valid { symbol: "X", unit: "kg/kg solids", from: 0.3, to: 1.5 },
        Valid { symbol: "T", unit: "°C", from: 60.0, to: 150.0 },
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
/// Sugar and salt are not in it. Valid for 0.3 ≤ X ≤ 1.5 and 60 to 150 °C, where the source uses it for baking crumb;
/// even there it holds water too firmly, by 1 to 2 K of boiling. Outside, the formula still answers, zero for no
/// moisture, and must not be believed: at room temperature it is far too dry (wheat of 14.5 % water, X = 0.17, has an
/// activity of 0.70 at 20 °C, this says 0.06). Never judge by it how flour, crust or biscuit keeps.
/// Zhang & Datta (2006), constants from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let crumb = science::heat::flour_water_activity(Fraction::ratio(0.85), Temperature::celsius(99.0));
/// assert_eq!(format!("{:.2}", crumb.as_ratio()), "0.94");
/// ```
#[must_use]
pub fn flour_water_activity(moisture: Fraction, temperature: Temperature) -> Fraction {
    let x = libm::log(moisture.as_percent().max(0.0));
    let ratio = libm::exp((half_moisture_logarithm(temperature.as_celsius()) - x) / EXPONENT);
    Fraction::ratio(1.0 / (1.0 + ratio))
}
