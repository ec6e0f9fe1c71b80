//! The steps by the clock, counted back from serving, for other programs.

use bench::forecast::Forecast;
use formula::Formula;
use plan::{Counted, countdown};
use quantity::TimeSpan;
use serde_json::{Value, json};

/// Every step in working order: when it begins before serving, how long it lasts, and what of that is foreseen.
pub fn json(formula: &Formula, forecast: &Forecast) -> Vec<Value> {
    countdown(formula, &forecast.rises).iter().map(|one| step(formula, one)).collect()
}

fn step(formula: &Formula, one: &Counted) -> Value {
    let component = &formula.components[one.at.0];
    let stage = formula.stage(one.at);
    json!({
        "component": component.name,
        "stage": stage.name,
        "step": one.step + 1,
        "action": stage.steps[one.step].action.word(),
        "begins-hours-before-serving": (TimeSpan::ZERO - one.begins).as_hours(),
        "lasts-hours": one.lasts.as_hours(),
        "foreseen-hours": one.foreseen.map(|seen| [seen.range.from, seen.range.to].map(TimeSpan::as_hours)),
    })
}
