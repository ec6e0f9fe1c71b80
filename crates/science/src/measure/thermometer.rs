//! What a thermometer with stated limits of error can tell.

use crate::{Equation, Standing, Valid};
use quantity::TemperatureDifference;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "measure::thermometer",
    source: "jcgm-100-2008",
    place: "4.3.7",
    standing: Standing::Published,
    valid: &[Valid { symbol: "a", unit: "K", from: 0.0, to: 20.0 }],
};

/// Returns the standard uncertainty of a reading that is right within given limits.
///
/// ```text
/// u = a / √3
/// ```
///
/// | symbol | meaning                           | unit |
/// |--------|-----------------------------------|------|
/// | `u`    | standard uncertainty              | K    |
/// | `a`    | the limit of error, as in "±1 °C" | K    |
///
/// Valid for any limit; the error is taken as equally likely anywhere between the limits.
/// JCGM 100:2008 (GUM), 4.3.7.
///
/// ```
/// # use quantity::TemperatureDifference;
/// let u = science::measure::thermometer::within(TemperatureDifference::kelvins(1.0));
/// assert_eq!(format!("{:.3} K", u.as_kelvins()), "0.577 K");
/// ```
#[must_use]
pub fn within(limit: TemperatureDifference) -> TemperatureDifference {
    limit / libm::sqrt(3.0)
}
