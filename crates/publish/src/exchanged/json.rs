//! An exchange for other programs: gram, percent, hours, and the formula's new text.

use crate::comparison;
use crate::outlook::known::origin;
use bench::exchange::{ChangedLine, Exchanged, NewTime};
use quantity::{Fraction, Mass};
use serde_json::{Value, json};

/// The exchange as JSON.
#[must_use]
pub fn json(exchanged: &Exchanged) -> Value {
    json!({
        "formula": exchanged.formula.name,
        "lines": exchanged.lines.iter().map(line).collect::<Vec<_>>(),
        "comparison": comparison::json(&exchanged.comparison),
        "times": exchanged.times.iter().map(time).collect::<Vec<_>>(),
        "not-kept": exchanged.lost,
        "to-mind": exchanged.minded,
        "grounds": exchanged.grounds,
        "rests-on": exchanged.rests_on.iter().map(origin).collect::<Vec<_>>(),
        "found": exchanged.found.iter().map(|found| json!({ "code": found.code, "message": found.message })).collect::<Vec<_>>(),
        "text": exchanged.text,
    })
}

fn line(line: &ChangedLine) -> Value {
    let figure = |one: Option<(Mass, Option<Fraction>)>| {
        one.map(|(mass, share)| json!({ "grams": mass.as_grams(), "percent-of-stage-flour": share.map(Fraction::as_percent) }))
    };
    json!({ "stage": line.stage, "title": line.title, "before": figure(line.before), "after": figure(line.after) })
}

fn time(new: &NewTime) -> Value {
    let hours = |range: quantity::Between<quantity::TimeSpan>| [range.from.as_hours(), range.to.as_hours()];
    json!({ "stage": new.stage, "action": new.action.word(), "before-hours": new.before.map(hours), "after-hours": hours(new.after), "origin": origin(&new.origin) })
}
