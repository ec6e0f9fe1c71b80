//! The room over the day: at one temperature, between day and night, or as it was measured.

use formula::read::Kitchen;
use quantity::{Temperature, TemperatureDifference, TimeSpan};
use std::f64::consts::TAU;

/// How warm the room is by the clock.
#[derive(Clone, Debug, PartialEq)]
pub enum RoomCourse {
    /// At one temperature.
    Constant(Temperature),
    /// A wave from the warmest hour to the coldest, twelve hours apart.
    DayAndNight {
        /// The warmest, at three in the afternoon.
        day: Temperature,
        /// The coldest, at three in the night.
        night: Temperature,
    },
    /// As measured: seconds after midnight, rising.
    Measured(Vec<(TimeSpan, Temperature)>),
}

/// When a room is warmest: common practice, no source.
const WARMEST: f64 = 15.0;
/// How often a room that changes is looked at.
const EVERY: TimeSpan = TimeSpan::minutes(30.0);
const DAY: f64 = 24.0;

impl RoomCourse {
    /// The course of a kitchen's room; `usual` where it states nothing.
    #[must_use]
    pub fn of(kitchen: &Kitchen, usual: Temperature) -> Self {
        let day = kitchen.room.unwrap_or(usual);
        match kitchen.night {
            _ if !kitchen.room_by_clock.is_empty() => Self::Measured(kitchen.room_by_clock.clone()),
            Some(night) => Self::DayAndNight { day, night },
            None => Self::Constant(day),
        }
    }

    /// The same so much warmer, all day long.
    #[must_use]
    pub fn shifted(self, by: TemperatureDifference) -> Self {
        match self {
            Self::Constant(room) => Self::Constant(room + by),
            Self::DayAndNight { day, night } => Self::DayAndNight { day: day + by, night: night + by },
            Self::Measured(points) => Self::Measured(points.into_iter().map(|(at, room)| (at, room + by)).collect()),
        }
    }

    /// Whether it is the same all day.
    #[must_use]
    pub const fn is_constant(&self) -> bool {
        matches!(self, Self::Constant(_))
    }

    /// The mean of the measured hours from eight in the morning to eight at night, if it was measured.
    pub(super) fn by_day(&self) -> Option<Temperature> {
        let Self::Measured(_) = self else { return None };
        let hours = (8..20).map(|hour| self.at(TimeSpan::hours(f64::from(hour))).as_celsius());
        Some(Temperature::celsius(hours.sum::<f64>() / 12.0))
    }

    /// The room at a time of any day.
    #[must_use]
    pub fn at(&self, clock: TimeSpan) -> Temperature {
        let hour = clock.as_hours().rem_euclid(DAY);
        match self {
            Self::Constant(room) => *room,
            Self::DayAndNight { day, night } => {
                let share = 0.5 + 0.5 * libm::cos(TAU * (hour - WARMEST) / DAY);
                Temperature::celsius(night.as_celsius() + share * (day.as_celsius() - night.as_celsius()))
            }
            Self::Measured(points) => measured(points, hour),
        }
    }

    /// The room from a time on, as often as it needs looking at: how long after that time, and how warm.
    #[must_use]
    pub fn from(&self, clock: TimeSpan, lasts: TimeSpan) -> Vec<(TimeSpan, Temperature)> {
        if self.is_constant() || !lasts.is_finite() {
            return vec![(TimeSpan::ZERO, self.at(clock))];
        }
        let count = (lasts / EVERY).ceil().clamp(1.0, 1000.0) as u32;
        (0..count).map(|n| EVERY * f64::from(n)).map(|after| (after, self.at(clock + after + EVERY * 0.5))).collect()
    }
}

/// Between the two readings around an hour; midnight joins the last to the first.
fn measured(points: &[(TimeSpan, Temperature)], hour: f64) -> Temperature {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return super::ROOM };
    let after = points.iter().position(|(at, _)| at.as_hours() > hour);
    let (from, to) = match after {
        Some(0) => ((last.0.as_hours() - DAY, last.1), (first.0.as_hours(), first.1)),
        Some(n) => ((points[n - 1].0.as_hours(), points[n - 1].1), (points[n].0.as_hours(), points[n].1)),
        None => ((last.0.as_hours(), last.1), (first.0.as_hours() + DAY, first.1)),
    };
    let width = to.0 - from.0;
    let share = if width > 0.0 { (hour - from.0) / width } else { 0.0 };
    Temperature::celsius(from.1.as_celsius() + share * (to.1.as_celsius() - from.1.as_celsius()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(course: &RoomCourse, hour: f64) -> f64 {
        course.at(TimeSpan::hours(hour)).as_celsius()
    }

    #[test]
    fn day_and_night_are_met_at_their_hours() {
        let course = RoomCourse::DayAndNight { day: Temperature::celsius(22.0), night: Temperature::celsius(16.0) };
        for (hour, expected) in [(15.0, 22.0), (3.0, 16.0), (9.0, 19.0), (27.0, 16.0), (-9.0, 22.0)] {
            assert!((at(&course, hour) - expected).abs() < 1e-9, "{hour} h");
        }
    }

    #[test]
    fn readings_are_joined_over_midnight() {
        let point = |hour, celsius| (TimeSpan::hours(hour), Temperature::celsius(celsius));
        let course = RoomCourse::Measured(vec![point(6.0, 16.0), point(18.0, 22.0)]);
        for (hour, expected) in [(6.0, 16.0), (12.0, 19.0), (18.0, 22.0), (0.0, 19.0), (3.0, 17.5), (21.0, 20.5)] {
            assert!((at(&course, hour) - expected).abs() < 1e-9, "{hour} h");
        }
    }
}
