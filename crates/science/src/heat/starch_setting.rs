//! How fast wheat starch sets, and how much has set after a course of temperatures.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Rate, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::starch_setting",
    source: "zanoni-1995-starch",
    place: "first-order rate of gelatinisation, constants from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 60.0, to: 95.0 }],
};

/// The gas constant in J/(mol K).
const GAS_CONSTANT: f64 = 8.314;

/// Returns the rate at which starch that has not yet set does so.
///
/// ```text
/// dg/dt = k·(1 − g),   k = 2.8e18·exp(−139000 / (R·T))
/// ```
///
/// | symbol | meaning                  | value | unit      |
/// |--------|--------------------------|-------|-----------|
/// | `g`    | set share of the starch  |       | –         |
/// | `k`    | rate                     |       | 1/s       |
/// | `T`    | temperature              |       | K         |
/// | `R`    | gas constant             | 8.314 | J/(mol K) |
///
/// For dough without much sugar; in high-sugar batters starch sets only just under 100 °C. Valid for
/// 60 to 95 °C; below, the true rate falls to nothing. Zanoni, Schiraldi & Simonetta (1995).
///
/// ```
/// # use quantity::Temperature;
/// let rate = science::heat::starch_setting(Temperature::celsius(90.0));
/// assert_eq!(format!("{:.4} 1/s", rate.as_per_second()), "0.0284 1/s");
/// ```
#[must_use]
pub fn starch_setting(crumb: Temperature) -> Rate {
    Rate::per_second(2.8e18 * libm::exp(-139_000.0 / (GAS_CONSTANT * crumb.as_kelvins())))
}

/// Returns the share that has set after a course of temperatures, taking each step at the mean of its rates.
#[must_use]
pub fn set_share(course: &[(TimeSpan, Temperature)]) -> Fraction {
    let exponent: f64 = course
        .windows(2)
        .map(|pair| {
            let rate = f64::midpoint(starch_setting(pair[0].1).as_per_second(), starch_setting(pair[1].1).as_per_second());
            rate * (pair[1].0 - pair[0].0).as_seconds()
        })
        .sum();
    Fraction::ratio(-libm::expm1(-exponent))
}
