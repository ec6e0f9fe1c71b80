//! Figures with their origins, in words and as JSON.

use crate::words::Units;
use bench::forecast::{Forecast, RoomCourse, Surroundings};
use formula::{Known, Origin};
use quantity::{Between, Fraction, Mass, Temperature, TimeSpan, print};
use serde_json::{Value, json};

/// The kitchen in a sentence; what is taken for granted says so.
pub fn surroundings(around: &Surroundings, units: Units) -> String {
    let place = |name: &str, known: &Known<Temperature>| {
        format!("{name} {}{}", units.temperature(Between::just(known.value)), from(known))
    };
    let night = match &around.course {
        RoomCourse::Constant(_) => String::new(),
        RoomCourse::DayAndNight { night, .. } => {
            format!(" by day, {} at night", units.temperature(Between::just(*night)))
        }
        RoomCourse::Measured(_) => " by day, followed as it was measured".to_owned(),
    };
    format!("In {}: {}{night}, {}.", around.title, place("room", &around.room), place("fridge", &around.fridge))
}

/// What of the kitchen is taken for granted, besides what is said where it counts.
pub fn taken_for_granted(forecast: &Forecast, units: Units) -> String {
    let around = &forecast.surroundings;
    let mut granted = Vec::new();
    if is_assumed(&around.altitude) {
        granted.push("sea level".to_owned());
    }
    if is_assumed(&around.served_at) && !matches!(around.course, RoomCourse::Constant(_)) {
        granted.push("served at noon".to_owned());
    }
    let ring = &around.heat.ring;
    if !forecast.pots.is_empty() && is_assumed(&ring.heats_by) {
        granted.push("an electric plate".to_owned());
    }
    if !forecast.pots.is_empty() && is_assumed(&ring.across) {
        granted.push(format!("a pan {} across", units.length(Between::just(ring.across.value))));
    }
    if !around.has_vessels() {
        granted.push("a bowl that takes up no heat".to_owned());
    }
    granted
        .push("where no temperature is stated, dairy and egg as cold as the fridge and the rest as warm as the room".to_owned());
    format!("Assumed: {}.", granted.join("; "))
}

fn is_assumed<T>(known: &Known<T>) -> bool {
    matches!(known.origin, Origin::Assumed { .. })
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
