//! The rule of thumb for when a fed sourdough culture is ripe.

use super::{CultureOrganism, culture_growth};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::feed_rule",
    source: "ganzle-1998",
    place: "exponential growth of the yeast from the seed to the whole; the lag is fitted",
    standing: Standing::Fitted,
    valid: &[
        Valid { symbol: "f", unit: "of the flour", from: 0.04, to: 0.4 },
        Valid { symbol: "T", unit: "°C", from: 16.0, to: 28.0 },
    ],
};

/// Returns when a fed culture becomes ripe, as a rule of thumb.
///
/// ```text
/// t = [0.4 h·µ(27 °C) + ln(1/f)] / µ(T)
/// ```
///
/// | symbol | meaning                                        | unit |
/// |--------|------------------------------------------------|------|
/// | `t`    | time until it has risen to 90 % of its height  | h    |
/// | `f`    | flour in the seed, of all the flour            | –    |
/// | `µ`    | growth rate of the culture's yeast             | 1/h  |
/// | `T`    | temperature of the culture                     | °C   |
///
/// Valid for 4 to 40 % and 16 to 28 °C, within 12 % of the whole model there. Growth by Gänzle, Ehmann
/// & Hammes (1998).
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::ferment::{Growth, Organisms, Strain, feed_rule};
/// # let Growth::Culture(yeast) = Organisms::of(Strain::Sourdough).growth else { panic!() };
/// // Fed 1:5:5, so that a tenth and a little of the flour is old.
/// let time = feed_rule(Fraction::ratio(1.0 / 11.0), Temperature::celsius(25.0), &yeast);
/// assert_eq!(format!("{:.2} h", time.as_hours()), "6.52 h");
/// ```
#[must_use]
pub fn feed_rule(old_flour: Fraction, culture: Temperature, yeast: &CultureOrganism) -> TimeSpan {
    let lag = 0.4 * culture_growth(Temperature::celsius(27.0), yeast).as_per_hour();
    let growth = -libm::log(old_flour.as_ratio());
    TimeSpan::hours((lag + growth) / culture_growth(culture, yeast).as_per_hour())
}
