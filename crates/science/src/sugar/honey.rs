//! Honey: how thick it is, and whether it will crystallise.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature, Viscosity};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::honey",
    source: "rosemary-honey",
    place: "viscosity at 30, 50 and 70 °C; curve of Vogel, Tammann and Fulcher through the three",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "T", unit: "°C", from: 30.0, to: 70.0 }],
};

/// From this ratio of glucose to water on a honey tends to crystallise; from memory.
pub const CRYSTALLISES_FROM: f64 = 2.0;

/// Returns the viscosity of rosemary honey.
///
/// ```text
/// ln η = −7.90924 + 621.1015/(T + 33.89405)
/// ```
///
/// | symbol | meaning     | unit |
/// |--------|-------------|------|
/// | `η`    | viscosity   | Pa s |
/// | `T`    | temperature | °C   |
///
/// Valid for 30 to 70 °C; colder the curve is unsafe, and at −33.9 °C it has no value. Honeys differ twentyfold
/// with their water: 2 Pa s at 20 %, 40 Pa s at 14 %, both at 25 °C.
///
/// ```
/// # use quantity::Temperature;
/// let warm = science::sugar::honey::viscosity(Temperature::celsius(40.0));
/// assert_eq!(format!("{:.2} Pa s", warm.as_pascal_seconds()), "1.64 Pa s");
/// ```
#[must_use]
pub fn viscosity(at: Temperature) -> Viscosity {
    Viscosity::pascal_seconds(libm::exp(-7.909_24 + 621.1015 / (at.as_celsius() + 33.894_05)))
}

/// Returns whether a honey or syrup tends to crystallise, by its glucose and its water.
///
/// ```
/// # use quantity::Fraction;
/// let percent = Fraction::percent;
/// assert!(!science::sugar::honey::tends_to_crystallise(percent(31.3), percent(17.2)));
/// ```
#[must_use]
pub fn tends_to_crystallise(glucose: Fraction, water: Fraction) -> bool {
    glucose / water > CRYSTALLISES_FROM
}
