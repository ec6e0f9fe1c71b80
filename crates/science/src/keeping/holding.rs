//! Rules for food held out of the cold or below hot, added over preparation and display.

use crate::{Equation, Standing, Valid};
use quantity::TimeSpan;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::holding",
    source: "fsanz-3-2-2",
    place: "clauses 5 to 8, the 2-hour/4-hour guide; England SI 2013/2996, Schedule 4; Food Code 3-501.19",
    standing: Standing::Published,
    valid: &[Valid { symbol: "t", unit: "h", from: 0.0, to: 48.0 }],
};

/// What the two-hour/four-hour guide says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TwoFour {
    /// Under 2 h: use or put back in the cold.
    UseOrChill,
    /// 2 to 4 h: use now, do not chill again.
    UseNow,
    /// Over 4 h: throw away.
    Discard,
}

impl TwoFour {
    /// The verdict as guidance; never a certificate.
    #[must_use]
    pub const fn guidance(self) -> &'static str {
        match self {
            Self::UseOrChill => "Under 2 h in the zone in all: use it or put it back in the cold. Check your local authority.",
            Self::UseNow => {
                "Between 2 and 4 h in the zone in all: use it now, do not chill it again. Check your local authority."
            }
            Self::Discard => "Over 4 h in the zone in all: throw it away. Check your local authority.",
        }
    }
}

/// Returns what the two-hour/four-hour guide says of the total time between 5 and 60 °C.
///
/// ```text
/// t < 2 h: use or chill again    2 h ≤ t ≤ 4 h: use now    t > 4 h: discard
/// ```
///
/// | symbol | meaning                                     | unit |
/// |--------|---------------------------------------------|------|
/// | `t`    | time in the zone, all stays added           | h    |
///
/// A time that is no number counts as too long. Standard 3.2.2 of Australia and New Zealand.
///
/// ```
/// # use quantity::TimeSpan;
/// use science::keeping::holding::{TwoFour, two_four};
/// assert_eq!(two_four(TimeSpan::minutes(119.0)), TwoFour::UseOrChill);
/// ```
#[must_use]
pub fn two_four(in_the_zone: TimeSpan) -> TwoFour {
    let hours = in_the_zone.as_hours();
    if hours < 2.0 {
        TwoFour::UseOrChill
    } else if hours <= 4.0 {
        TwoFour::UseNow
    } else {
        TwoFour::Discard
    }
}

/// A single stay that a law allows without temperature control.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SingleStay {
    /// England: chilled food on display above 8 °C, once.
    EnglishChilled,
    /// England: hot food below 63 °C, once.
    EnglishHot,
    /// America: from 5 or 57 °C, time alone.
    American,
    /// America: started at 5 °C and never above 21 °C.
    AmericanNeverAbove21,
    /// America, advice to households: at room temperature.
    AmericanHousehold,
    /// America, advice to households: above 32 °C (90 °F).
    AmericanHouseholdInHeat,
}

impl SingleStay {
    /// How long it may last.
    #[must_use]
    pub const fn allowed(self) -> TimeSpan {
        TimeSpan::hours(match self {
            Self::EnglishChilled | Self::American => 4.0,
            Self::EnglishHot | Self::AmericanHousehold => 2.0,
            Self::AmericanHouseholdInHeat => 1.0,
            Self::AmericanNeverAbove21 => 6.0,
        })
    }
}
