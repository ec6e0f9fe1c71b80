//! The American Food Code's rule for cooling cooked food.

use super::history::{Reading, segments};
use crate::{Equation, Standing, Valid};
use quantity::{Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::cooling_rule",
    source: "food-code-2022",
    place: "3-501.14",
    standing: Standing::Published,
    valid: &[Valid { symbol: "t_21", unit: "h", from: 0.0, to: 100.0 }, Valid { symbol: "t_5", unit: "h", from: 0.0, to: 100.0 }],
};

/// From here on the clock runs.
pub const HOT: Temperature = Temperature::celsius(57.0);
/// To here within two hours.
pub const WARM: Temperature = Temperature::celsius(21.0);
/// To here within six hours in all.
pub const COLD: Temperature = Temperature::celsius(5.0);

const TO_WARM: TimeSpan = TimeSpan::hours(2.0);
const TO_COLD: TimeSpan = TimeSpan::hours(6.0);
const AMBIENT_TO_COLD: TimeSpan = TimeSpan::hours(4.0);

/// What the rule says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Cooled in time.
    InTime,
    /// Too long above 21 °C.
    TooLongHot,
    /// Too long until 5 °C.
    TooLongWarm,
    /// The record ends before 5 °C, in time so far.
    StillCooling,
}

impl Verdict {
    /// The verdict as guidance; never a certificate.
    #[must_use]
    pub const fn guidance(self) -> &'static str {
        match self {
            Self::InTime => "Cooled within the rule's times. Check your local authority.",
            Self::TooLongHot => {
                "Longer than 2 h above 21 °C: by the rule, reheat at once or throw away. Check your local authority."
            }
            Self::StillCooling => "In time so far, not yet at 5 °C: go on cooling and reading.",
            Self::TooLongWarm => "Longer than 6 h until 5 °C: by the rule, throw away. Check your local authority.",
        }
    }
}

/// Returns what the rule says of cooked food that reached 21 °C and 5 °C after such times from 57 °C.
///
/// ```text
/// 57 °C → 21 °C within 2 h,  57 °C → 5 °C within 6 h in all
/// ```
///
/// | symbol | meaning                    | unit |
/// |--------|----------------------------|------|
/// | `t_21` | time from 57 °C to 21 °C   | h    |
/// | `t_5`  | time from 57 °C to 5 °C    | h    |
///
/// A time that is no number counts as too long. Food Code 3-501.14.
///
/// ```
/// # use quantity::TimeSpan;
/// use science::keeping::cooling_rule::{Verdict, cooked};
/// assert_eq!(cooked(TimeSpan::minutes(121.0), TimeSpan::hours(5.0)), Verdict::TooLongHot);
/// ```
#[must_use]
pub fn cooked(to_21: TimeSpan, to_5: TimeSpan) -> Verdict {
    match (to_21 <= TO_WARM, to_5 <= TO_COLD) {
        (false, _) => Verdict::TooLongHot,
        (true, false) => Verdict::TooLongWarm,
        (true, true) => Verdict::InTime,
    }
}

/// Returns what the rule says of food made from things at room temperature: to 5 °C within 4 h.
///
/// ```
/// # use quantity::TimeSpan;
/// use science::keeping::cooling_rule::{Verdict, from_ambient};
/// assert_eq!(from_ambient(TimeSpan::hours(4.5)), Verdict::TooLongWarm);
/// ```
#[must_use]
pub fn from_ambient(to_5: TimeSpan) -> Verdict {
    if to_5 <= AMBIENT_TO_COLD { Verdict::InTime } else { Verdict::TooLongWarm }
}

/// Returns what the rule says of a record of readings: the time spent between 57 and 21 °C, and between 57 and
/// 5 °C. A record that has not reached 5 °C is still cooling while its time is not up.
///
/// ```
/// # use quantity::{Temperature, TimeSpan};
/// use science::keeping::{cooling_rule::{Verdict, of_record}, history::Reading};
/// let at = |hours, celsius| Reading { at: TimeSpan::hours(hours), temperature: Temperature::celsius(celsius) };
/// assert_eq!(of_record(&[at(0.0, 57.0), at(1.0, 30.0)]), Verdict::StillCooling);
/// ```
#[must_use]
pub fn of_record(readings: &[Reading]) -> Verdict {
    let until = |end: Temperature| segments(readings).map(|segment| segment.time_between(end, HOT)).sum::<TimeSpan>();
    match cooked(until(WARM), until(COLD)) {
        Verdict::InTime if !readings.iter().any(|reading| reading.temperature <= COLD) => Verdict::StillCooling,
        verdict => verdict,
    }
}
