//! The temperatures a dough goes through.

use super::State;
use crate::numeric::exponential::exp;
use quantity::{Rate, Temperature, TimeSpan};

/// The temperatures a dough goes through.
#[derive(Clone, Debug, PartialEq)]
pub enum TemperaturePath {
    /// The same throughout.
    Constant(Temperature),
    /// Straight lines between points in time; before the first and after the last it stays. Two
    /// points at one time are a jump.
    Line(Vec<(TimeSpan, Temperature)>),
    /// From its first temperature towards the air of one room after another.
    Rooms {
        /// The dough's temperature when mixed.
        start: Temperature,
        /// The rooms in their order; the first counts from the start.
        rooms: Vec<Room>,
        /// Whether its ferment warms it.
        own_heat: Warming,
    },
}

/// Air that a dough stands in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// From when on.
    pub from: TimeSpan,
    /// The air.
    pub air: Temperature,
    /// How fast the dough approaches it: 0.25 an hour for 1.5 kg in a basket, 0.5 for a kilogram of
    /// batter in a bowl, 1.1 for 300 g in a jar.
    pub approach: Rate,
}

/// Whether a dough's ferment warms it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Warming {
    /// It does, as in a large sponge.
    Counted,
    /// It is small beside the exchange with the room.
    Ignored,
}

/// A stretch of the path without a break.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    pub from: f64,
    pub to: f64,
    pub course: StretchCourse,
}

/// How the temperature goes within a stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum StretchCourse {
    Line { first: f64, slope: f64 },
    Approach { first: f64, air: f64, rate: f64 },
    Own { air: f64, rate: f64 },
}

impl Stretch {
    /// The temperature at an hour, where it does not depend on the dough.
    pub(super) fn temperature(&self, hour: f64) -> Option<Temperature> {
        let past = hour - self.from;
        match self.course {
            StretchCourse::Line { first, slope } => Some(Temperature::celsius(first + slope * past)),
            StretchCourse::Approach { first, air, rate } => Some(Temperature::celsius(air + (first - air) * exp(-rate * past))),
            StretchCourse::Own { .. } => None,
        }
    }

    /// The temperature at an hour of a dough in that state.
    pub(super) fn temperature_of(&self, hour: f64, state: &State) -> Temperature {
        self.temperature(hour).unwrap_or(state.temperature)
    }
}

impl TemperaturePath {
    /// The temperature at the start.
    #[must_use]
    pub fn first(&self) -> Temperature {
        match self {
            Self::Constant(temperature) => *temperature,
            Self::Line(points) => points.first().map_or(Temperature::default(), |(_, temperature)| *temperature),
            Self::Rooms { start, .. } => *start,
        }
    }

    /// Whether every figure is an ordinary number and the times follow each other.
    pub(super) fn is_sound(&self) -> bool {
        match self {
            Self::Constant(temperature) => temperature.is_finite(),
            Self::Line(points) => {
                !points.is_empty()
                    && points.iter().all(|(time, temperature)| time.is_finite() && temperature.is_finite())
                    && points.is_sorted_by(|(a, _), (b, _)| a <= b)
            }
            Self::Rooms { start, rooms, .. } => {
                start.is_finite()
                    && !rooms.is_empty()
                    && rooms.iter().all(|room| room.from.is_finite() && room.air.is_finite() && room.approach.is_finite())
                    && rooms.is_sorted_by(|a, b| a.from <= b.from)
            }
        }
    }

    /// The stretches from the start to an hour.
    pub(super) fn stretches(&self, until: f64) -> Vec<Stretch> {
        match self {
            Self::Constant(temperature) => vec![Stretch { from: 0.0, to: until, course: level(temperature.as_celsius()) }],
            Self::Line(points) => lines(points, until),
            Self::Rooms { start, rooms, own_heat } => approaches(*start, rooms, *own_heat, until),
        }
    }
}

const fn level(first: f64) -> StretchCourse {
    StretchCourse::Line { first, slope: 0.0 }
}

fn lines(points: &[(TimeSpan, Temperature)], until: f64) -> Vec<Stretch> {
    let points: Vec<(f64, f64)> = points.iter().map(|(time, t)| (time.as_hours(), t.as_celsius())).collect();
    let mut stretches = Vec::new();
    let mut push = |from: f64, to: f64, course| {
        let (start, end) = (from.max(0.0), to.min(until));
        if end > start {
            let course = match course {
                StretchCourse::Line { first, slope } => StretchCourse::Line { first: first + slope * (start - from), slope },
                other => other,
            };
            stretches.push(Stretch { from: start, to: end, course });
        }
    };
    if let Some((time, first)) = points.first() {
        push(0.0, *time, level(*first));
    }
    for pair in points.windows(2) {
        let [(from, first), (to, last)] = [pair[0], pair[1]];
        push(from, to, StretchCourse::Line { first, slope: (last - first) / (to - from) });
    }
    if let Some((time, last)) = points.last() {
        push(*time, f64::INFINITY, level(*last));
    }
    stretches
}

fn approaches(start: Temperature, rooms: &[Room], own_heat: Warming, until: f64) -> Vec<Stretch> {
    let mut first = start.as_celsius();
    let mut stretches = Vec::new();
    for (i, room) in rooms.iter().enumerate() {
        let from = if i == 0 { 0.0 } else { room.from.as_hours().max(0.0) };
        let to = rooms.get(i + 1).map_or(until, |next| next.from.as_hours().min(until));
        if to <= from {
            continue;
        }
        let (air, rate) = (room.air.as_celsius(), room.approach.as_per_hour());
        let course = match own_heat {
            Warming::Counted => StretchCourse::Own { air, rate },
            Warming::Ignored => StretchCourse::Approach { first, air, rate },
        };
        stretches.push(Stretch { from, to, course });
        first = air + (first - air) * exp(-rate * (to - from));
    }
    stretches
}
