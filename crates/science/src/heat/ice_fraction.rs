//! How much of a food is ice below its freezing point.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::ice_fraction",
    source: "tchigeov-1979",
    place: "as printed in the ASHRAE Handbook, Refrigeration, ch. 9",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "x_w", unit: "–", from: 0.0, to: 1.0 },
        Valid { symbol: "T_f", unit: "°C", from: -2.0, to: -0.4 },
        Valid { symbol: "T", unit: "°C", from: -45.0, to: -0.4 },
    ],
};

/// Returns the mass fraction of ice in a food, a share of the whole food.
///
/// ```text
/// x_ice = 1.105·x_w / (1 + 0.7138 / ln(T_f − T + 1))
/// ```
///
/// | symbol  | meaning                            | unit |
/// |---------|------------------------------------|------|
/// | `x_ice` | mass fraction of ice               | –    |
/// | `x_w`   | mass fraction of water, all liquid | –    |
/// | `T_f`   | temperature at which freezing sets in | °C |
/// | `T`     | temperature                        | °C   |
///
/// Valid for −45 °C ≤ T < T_f and −2 °C ≤ T_f ≤ −0.4 °C; at and above the freezing point there is no
/// ice. Below −45 °C the formula goes on and may pass the water there is.
/// Tchigeov (1979), coefficients from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let ice = science::heat::ice_fraction(Fraction::percent(58.0), Temperature::celsius(-1.7), Temperature::celsius(-20.0));
/// assert_eq!(format!("{:.3}", ice.as_ratio()), "0.516");
/// ```
#[must_use]
pub fn ice_fraction(water: Fraction, freezing: Temperature, temperature: Temperature) -> Fraction {
    let below = (freezing - temperature).as_kelvins();
    if below <= 0.0 {
        return Fraction::ZERO;
    }
    water * (1.105 / (1.0 + 0.7138 / libm::log(below + 1.0)))
}
