//! How long a food spent in the temperatures where bacteria grow fast.

use super::history::{Reading, segments};
use crate::{Equation, Standing, Valid};
use quantity::{Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::danger_zone",
    source: "food-code-2022",
    place: "3-501.16; England SI 2013/2996, Schedule 4; Australia Standard 3.2.2",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: -40.0, to: 250.0 }],
};

/// Whose temperatures bound the zone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Zone {
    /// Between 5 and 57 °C (41 and 135 °F).
    American,
    /// Between 8 and 63 °C: England, Wales, Northern Ireland.
    English,
    /// Between 5 and 60 °C: Australia and New Zealand.
    Australian,
}

impl Zone {
    /// Its lower and upper temperature.
    #[must_use]
    pub const fn bounds(self) -> (Temperature, Temperature) {
        let (low, high) = match self {
            Self::American => (5.0, 57.0),
            Self::English => (8.0, 63.0),
            Self::Australian => (5.0, 60.0),
        };
        (Temperature::celsius(low), Temperature::celsius(high))
    }
}

/// Returns the time a history spends in the zone, added over all its stays.
///
/// ```text
/// t = Σ Δt · (share of each straight piece between the bounds)
/// ```
///
/// | symbol | meaning              | unit |
/// |--------|----------------------|------|
/// | `t`    | time in the zone     | s    |
/// | `Δt`   | length of a piece    | s    |
///
/// Valid for any readings; pieces that are no numbers are left out. A warm yeast batter spends its time in
/// this zone: count it, and chill what is not cooked.
///
/// ```
/// # use quantity::{Temperature, TimeSpan};
/// use science::keeping::{danger_zone::{Zone, time}, history::Reading};
/// let at = |hours, celsius| Reading { at: TimeSpan::hours(hours), temperature: Temperature::celsius(celsius) };
/// let stay = time(&[at(0.0, 0.0), at(1.0, 20.0)], Zone::American);
/// assert_eq!(stay.as_minutes(), 45.0);
/// ```
#[must_use]
pub fn time(readings: &[Reading], zone: Zone) -> TimeSpan {
    let (low, high) = zone.bounds();
    segments(readings).map(|segment| segment.time_between(low, high)).sum()
}
