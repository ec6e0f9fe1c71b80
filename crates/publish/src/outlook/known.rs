//! Figures with their origins, in words and as JSON.

use crate::words::Units;
use bench::forecast::Surroundings;
use formula::{Known, Origin};
use quantity::{Between, Fraction, Mass, Temperature, TimeSpan, print};
use serde_json::{Value, json};

/// The kitchen in a sentence; what is taken for granted says so.
pub fn surroundings(around: &Surroundings, units: Units) -> String {
    let place = |name: &str, known: &Known<Temperature>| {
        format!("{name} {}{}", units.temperature(Between::just(known.value)), from(known))
    };
    let night = match &around.course {
        bench::forecast::RoomCourse::Constant(_) => String::new(),
        bench::forecast::RoomCourse::DayAndNight { night, .. } => {
            format!(" by day, {} at night", units.temperature(Between::just(*night)))
        }
        bench::forecast::RoomCourse::Measured(_) => " by day, followed as it was measured".to_owned(),
    };
    format!("In {}: {}{night}, {}.", around.title, place("room", &around.room), place("fridge", &around.fridge))
}

/// What stands behind a figure that is not the kitchen's own.
pub fn from<T>(known: &Known<T>) -> &'static str {
    match known.origin {
        Origin::Assumed { .. } => " (assumed)",
        Origin::Asked => " (asked for)",
        _ => "",
    }
}

/// A time, rounded as a person would tell it.
pub fn time(span: TimeSpan) -> String {
    print::time(print::rounded_time(Between::just(span)))
}

/// A temperature to the half degree.
pub fn degrees(t: Temperature, units: Units) -> String {
    units.temperature(Between::just(Temperature::celsius((t.as_celsius() * 2.0).round() / 2.0)))
}

/// A temperature to the degree.
pub fn whole(t: Temperature, units: Units) -> String {
    units.temperature(Between::just(Temperature::celsius(t.as_celsius().round())))
}

/// Which trials a figure was learnt from, if it was.
pub fn learnt<T>(known: &Known<T>) -> String {
    match &known.origin {
        Origin::Measured(by) => format!(" ({by})"),
        _ => String::new(),
    }
}

/// Where a figure comes from, as JSON.
pub fn origin(origin: &Origin) -> Value {
    match origin {
        Origin::Stated(place) => json!({ "stated-in": &*place.file }),
        Origin::Measured(by) => json!({ "measured": by }),
        Origin::Asked => json!("asked"),
        Origin::Computed { by, source } => match bench::grounds(source) {
            Some(grounds) => json!({ "computed": by, "equation": grounds.equation, "source": grounds.citation }),
            None => json!({ "computed": by, "source": source }),
        },
        Origin::Assumed { source } => json!({ "assumed": source }),
    }
}

/// A temperature as JSON.
pub fn temperature(known: &Known<Temperature>) -> Value {
    let band = known.band.map(|(from, to)| [from.as_celsius(), to.as_celsius()]);
    json!({ "celsius": known.value.as_celsius(), "band-celsius": band, "origin": origin(&known.origin) })
}

/// A time as JSON.
pub fn hours(known: &Known<TimeSpan>) -> Value {
    let band = known.band.map(|(from, to)| [from.as_hours(), to.as_hours()]);
    json!({ "hours": known.value.as_hours(), "band-hours": band, "origin": origin(&known.origin) })
}

/// A share as JSON.
pub fn share(known: &Known<Fraction>) -> Value {
    let band = known.band.map(|(from, to)| [from.as_ratio(), to.as_ratio()]);
    json!({ "ratio": known.value.as_ratio(), "band": band, "origin": origin(&known.origin) })
}

/// A range of masses as JSON.
pub fn masses(known: &Known<Between<Mass>>) -> Value {
    json!({ "gram": [known.value.from.as_grams(), known.value.to.as_grams()], "origin": origin(&known.origin) })
}
