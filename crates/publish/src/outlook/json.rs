//! A forecast for other programs: times in hours, temperatures in degrees Celsius, unrounded.

use bench::forecast::{Cooking, Forecast, Foreseen, Rise};
use formula::{Formula, Known, Origin};
use quantity::{Temperature, TimeSpan};
use serde_json::{Value, json};

/// The forecast as JSON.
#[must_use]
pub fn json(formula: &Formula, forecast: &Forecast) -> Value {
    json!({
        "formula": formula.name,
        "kitchen": forecast.surroundings.title,
        "room": temperature(&forecast.surroundings.room),
        "fridge": temperature(&forecast.surroundings.fridge),
        "rises": forecast.rises.iter().map(rise).collect::<Vec<_>>(),
        "cookings": forecast.cookings.iter().map(cooking).collect::<Vec<_>>(),
        "not-told": forecast.missing,
    })
}

fn origin(origin: &Origin) -> Value {
    match origin {
        Origin::Stated(place) => json!({ "stated-in": &*place.file }),
        Origin::Measured(by) => json!({ "measured": by }),
        Origin::Computed { by, source } => json!({ "computed": by, "source": source }),
        Origin::Assumed { source } => json!({ "assumed": source }),
    }
}

fn temperature(known: &Known<Temperature>) -> Value {
    let band = known.band.map(|(from, to)| [from.as_celsius(), to.as_celsius()]);
    json!({ "celsius": known.value.as_celsius(), "band-celsius": band, "origin": origin(&known.origin) })
}

fn time(known: &Known<TimeSpan>) -> Value {
    let band = known.band.map(|(from, to)| [from.as_hours(), to.as_hours()]);
    json!({ "hours": known.value.as_hours(), "band-hours": band, "origin": origin(&known.origin) })
}

fn rise(rise: &Rise) -> Value {
    let mixed = rise.mixed.as_ref().map(|mixed| {
        json!({
            "computed": temperature(&mixed.computed),
            "wanted-celsius": mixed.wanted.map(Temperature::as_celsius),
            "liquid": mixed.liquid.as_ref().map(|(title, at)| json!({ "ingredient": title, "celsius": at.as_celsius() })),
        })
    });
    let points: Vec<Value> = rise
        .points
        .iter()
        .map(|point| json!({ "hours": point.time.as_hours(), "risen": point.risen, "celsius": point.temperature.as_celsius() }))
        .collect();
    json!({
        "title": rise.title,
        "leaven": rise.leaven,
        "mixed": mixed,
        "steps": rise.steps.iter().map(step).collect::<Vec<_>>(),
        "course": points,
        "outside": rise.outside,
    })
}

fn step(step: &Foreseen) -> Value {
    json!({
        "action": step.action.word(),
        "stated-hours": step.stated.map(|stated| [stated.from.as_hours(), stated.to.as_hours()]),
        "reached": step.reached.as_ref().map(|window| json!({ "from": time(&window.from), "to": time(&window.to) })),
        "risen-at-end": step.risen.value,
        "verdict": step.verdict.in_words(),
    })
}

fn cooking(cooking: &Cooking) -> Value {
    let core = cooking.core.value;
    json!({
        "action": cooking.action.word(),
        "core-celsius": [core.from.as_celsius(), core.to.as_celsius()],
        "wanted-celsius": cooking.wanted.map(Temperature::as_celsius),
        "salmonella-decimal-reductions": cooking.reductions,
        "enough": cooking.is_enough(),
        "loss-percent": cooking.loss.as_percent(),
        "batches": cooking.batches.0,
        "origin": origin(&cooking.core.origin),
    })
}
