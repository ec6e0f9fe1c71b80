//! Figures followed from trial to trial, in words and for other programs.

use crate::words::wrap;
use quantity::Measure;
use serde_json::{Value, json};

/// A figure of a formula, as the trials tell it one after another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Followed {
    /// The formula's title.
    pub formula: String,
    /// The figure: "levain/ferment/lasted".
    pub figure: String,
    /// The day of each trial, its name and what was noted, in the order of time.
    pub noted: Vec<(String, String, String)>,
}

/// A line a figure under its formula's title; figures that were noted only once are counted.
#[must_use]
pub fn followed(all: &[Followed], width: usize) -> String {
    let (mut out, mut once) = (String::new(), 0);
    for group in all.chunk_by(|a, b| a.formula == b.formula) {
        let told: Vec<&Followed> = group.iter().filter(|one| one.noted.len() > 1).collect();
        once += group.len() - told.len();
        if told.is_empty() {
            continue;
        }
        let title = &group[0].formula;
        out.push_str(&format!("{}{title}\n{}\n", if out.is_empty() { "" } else { "\n" }, "═".repeat(title.chars().count())));
        for one in told {
            let noted: Vec<String> =
                one.noted.iter().map(|(on, trial, value)| format!("{} ({})", held(value), day(on, trial))).collect();
            out.push_str(&wrap(&format!("• {}: {}{}", one.figure, noted.join(", "), ends(one)), width));
        }
    }
    match once {
        0 => {}
        1 => out.push_str(&wrap("\nOne figure more was noted only once.", width)),
        _ => out.push_str(&wrap(&format!("\n{once} figures more were noted only once."), width)),
    }
    out.trim_start_matches('\n').to_owned()
}

/// For other programs.
#[must_use]
pub fn followed_json(all: &[Followed]) -> Value {
    let noted = |one: &Followed| -> Vec<Value> {
        one.noted.iter().map(|(on, trial, value)| json!({ "trial": trial, "on": on, "value": value })).collect()
    };
    all.iter().map(|one| json!({ "formula": one.formula, "figure": one.figure, "noted": noted(one) })).collect()
}

/// A figure that stays on its line with its unit.
fn held(value: &str) -> String {
    value.replace(' ', "\u{a0}")
}

fn day<'d>(on: &'d str, trial: &'d str) -> &'d str {
    if on.is_empty() { trial } else { on }
}

/// "; least 21.5 °C, most 24 °C", of three trials or more that are told in one unit.
fn ends(one: &Followed) -> String {
    let read = |value: &String| value.parse::<Measure>().ok();
    let all: Option<Vec<(Measure, &String)>> = one.noted.iter().map(|(.., value)| Some((read(value)?, value))).collect();
    let Some(mut all) = all.filter(|all| all.len() > 2 && all.iter().all(|(measure, _)| measure.unit == all[0].0.unit)) else {
        return String::new();
    };
    all.sort_by(|a, b| a.0.value.from.total_cmp(&b.0.value.from));
    match (all.first(), all.last()) {
        (Some((least, low)), Some((most, high))) if least != most => format!("; least {}, most {}", held(low), held(high)),
        _ => String::new(),
    }
}
