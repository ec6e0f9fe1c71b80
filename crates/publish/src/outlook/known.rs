//! Figures with their origins, in words and as JSON.

use crate::words::Units;
use bench::forecast::{Forecast, RoomCourse, Surroundings};
use bench::grounds::{By, grounds};
use formula::{Known, Origin, Place};
use quantity::{Between, Fraction, Length, Mass, Power, Temperature, TimeSpan, print};
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

/// What computed or taught a figure, in sentences: the equation by its name, with its source and standing.
pub fn ground(origin: &Origin) -> Option<String> {
    match origin {
        Origin::Computed { by, source } => Some(print::capital(&format!("{by}{}", why(source)))),
        Origin::Measured(by) => Some(print::capital(&format!("{by} — this kitchen's own trials, told by the command “learn”."))),
        Origin::Stated(_) | Origin::Asked | Origin::Assumed { .. } => None,
    }
}

/// What a figure rests on, in the sentences that follow its name.
fn why(source: &str) -> String {
    match grounds(source) {
        Some(grounds) => format!(", by the equation {} ({}). {}", grounds.equation, grounds.citation, grounds.standing),
        None if source.is_empty() => ".".to_owned(),
        None => format!(" ({source})."),
    }
}

/// Where a figure comes from, as JSON.
pub fn origin(origin: &Origin) -> Value {
    match origin {
        Origin::Stated(place) => json!({ "stated-in": &*place.file }),
        Origin::Measured(by) => json!({ "measured": by }),
        Origin::Asked => json!("asked"),
        Origin::Computed { by, source } => match grounds(source) {
            Some(grounds) => json!({ "computed": by, "equation": grounds.equation, "source": grounds.citation }),
            None => json!({ "computed": by, "source": source }),
        },
        Origin::Assumed { source } => json!({ "assumed": source }),
    }
}

/// A figure for other programs: value, unit, band and origin.
pub fn figure<T: Copy>(known: &Known<T>, unit: &str, plain: impl Fn(T) -> f64) -> Value {
    let band = known.band.map(|(from, to)| [plain(from), plain(to)]);
    json!({ "value": plain(known.value), "unit": unit, "band": band, "origin": origin(&known.origin) })
}

/// A figure from one to another, as a person states it or as it runs from one extreme to the other.
pub fn range<T: Copy>(known: &Known<Between<T>>, unit: &str, plain: impl Fn(T) -> f64) -> Value {
    json!({ "from": plain(known.value.from), "to": plain(known.value.to), "unit": unit, "origin": origin(&known.origin) })
}

/// A figure with what computes it.
pub fn by(by: By, value: f64, unit: &str) -> Value {
    figure(&by.known(value), unit, |value| value)
}

/// A figure that the formula states.
pub fn stated(place: &Place, value: f64, unit: &str) -> Value {
    figure(&Known::stated(value, place.clone()), unit, |value| value)
}

/// A temperature as JSON.
pub fn temperature(known: &Known<Temperature>) -> Value {
    figure(known, "celsius", Temperature::as_celsius)
}

/// A time as JSON.
pub fn hours(known: &Known<TimeSpan>) -> Value {
    figure(known, "hours", TimeSpan::as_hours)
}

/// A share as JSON.
pub fn share(known: &Known<Fraction>) -> Value {
    figure(known, "ratio", Fraction::as_ratio)
}

/// The kitchen for other programs: everything that the forecast reads of it, with what is assumed.
pub fn kitchen(around: &Surroundings) -> Value {
    let ring = &around.heat.ring;
    let recovery = around.heat.recovery();
    let of_recovery = |value: f64| Known { value, band: None, origin: recovery.origin.clone() };
    json!({
        "title": around.title,
        "room": temperature(&around.room),
        "fridge": temperature(&around.fridge),
        "altitude": figure(&around.altitude, "metres", Length::as_metres),
        "served-at": hours(&around.served_at),
        "finest-scale": figure(&around.shows, "gram", Mass::as_grams),
        "ring": {
            "heats-by": { "value": ring.heats_by.value.word(), "origin": origin(&ring.heats_by.origin) },
            "power": figure(&ring.power, "watts", Power::as_watts),
            "narrowest-pan": figure(&ring.across, "millimetres", Length::as_millimetres),
        },
        "oven": {
            "fan": { "value": around.heat.fan.value, "origin": origin(&around.heat.fan.origin) },
            "falls-by": figure(&of_recovery(recovery.value.0), "kelvin", |value| value),
            "recovers-in": figure(&of_recovery(recovery.value.1.as_minutes()), "minutes", |value| value),
        },
    })
}
