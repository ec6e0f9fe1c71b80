//! A day's list to hang up: when, what, with what weights.

use crate::day::{is_told, made_ready, told};
use crate::words::Units;
use plan::day::Timeline;
use serde_json::{Value, json};

/// The words of a day's list.
#[must_use]
pub fn prep(timeline: &Timeline, language: &str, units: Units) -> Value {
    let mut days: Vec<(String, Vec<Value>)> = Vec::new();
    for entry in timeline.entries.iter().filter(|entry| is_told(timeline, entry)) {
        let one = told(timeline, entry, units);
        if days.last().is_none_or(|(day, _)| *day != one.day) {
            days.push((one.day.clone(), Vec::new()));
        }
        let words = one.words.unwrap_or_else(|| made_ready(timeline, &timeline.jobs[entry.job], units.tongue));
        let item = json!({ "time": one.time, "what": one.what, "weights": one.weights, "words": words });
        if let Some((_, items)) = days.last_mut() {
            items.push(item);
        }
    }
    let titles: Vec<&str> = timeline.dishes.iter().map(|dish| dish.formula.head.title.as_str()).collect();
    json!({
        "language": language,
        "title": units.tongue.day_what_to_do(),
        "dishes": titles,
        "days": days.iter().map(|(day, items)| json!({ "day": day, "items": items })).collect::<Vec<_>>(),
    })
}
