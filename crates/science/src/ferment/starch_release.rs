//! How fast the flour's amylases set maltose free.

use crate::numeric::exponential::exp;
use crate::{Equation, Standing, Valid};
use quantity::{Acidity, Rate, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::starch_release",
    source: "maltose-forum",
    place: "about 6 % maltose after 6 h; factor 1.7 for 10 K and the slowing by acid from memory",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "T", unit: "°C", from: 4.0, to: 40.0 }, Valid { symbol: "pH", unit: "–", from: 3.5, to: 6.5 }],
};

/// How a flour's amylases answer temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Release {
    /// The release at 30 °C.
    pub at_30: Rate,
    /// The logarithm of what a kelvin more multiplies it with.
    pub warming: f64,
}

impl Release {
    /// A release at 30 °C that ten kelvin multiply.
    #[must_use]
    pub fn new(at_30: Rate, for_ten_kelvin: f64) -> Self {
        Self { at_30, warming: libm::log(for_ten_kelvin) / 10.0 }
    }
}

/// Returns the share of the releasable starch that becomes maltose in an hour.
///
/// ```text
/// k = k_30·q^((T − 30)/10)·min(1, max(0, (pH − 3.2)/0.8))
/// ```
///
/// | symbol | meaning                          | value | unit |
/// |--------|----------------------------------|-------|------|
/// | `k`    | release                          |       | 1/h  |
/// | `T`    | dough temperature                |       | °C   |
/// | `k_30` | release at 30 °C, fitted         | 0.40  | 1/h  |
/// | `q`    | factor for 10 K, from memory     | 1.7   | –    |
/// | `pH`   | acidity; full above 4, none below 3.2 | | –   |
///
/// Valid for 4 °C ≤ T ≤ 40 °C. Malt and rye ask for a larger `k_30`.
///
/// ```
/// # use quantity::{Acidity, Rate, Temperature};
/// # use science::ferment::{Release, starch_release};
/// let flour = Release::new(Rate::per_hour(0.4), 1.7);
/// let release = starch_release(Temperature::celsius(30.0), Acidity::ph(6.0), &flour);
/// assert_eq!(release.as_per_hour(), 0.4);
/// ```
#[must_use]
pub fn starch_release(dough: Temperature, acidity: Acidity, flour: &Release) -> Rate {
    flour.at_30 * (exp(flour.warming * (dough.as_celsius() - 30.0)) * acidity_share(acidity))
}

/// What acid leaves of the release.
pub(super) fn acidity_share(acidity: Acidity) -> f64 {
    ((acidity.as_ph() - 3.2) / 0.8).clamp(0.0, 1.0)
}
