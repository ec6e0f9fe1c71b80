//! Steps of a day as they are named on the command line, and what is told of them.

use crate::failure::Failure;
use crate::moment;
use formula::read::Condition;
use jiff::ZonedDateTime;
use jiff::tz::TimeZone;
use plan::day::{Begins, Fix, Happened, Progress, Seen, StepName, What};
use quantity::Fraction;

/// "sponge/ferment=06:10": a step that has happened.
pub fn happened(
    text: &str,
    zone: &TimeZone,
    now: &ZonedDateTime,
    progress: fn(ZonedDateTime) -> Progress,
) -> Result<Happened, Failure> {
    let wrong = || Failure::new(format!("“{text}” names no step with its time")).hint("write \"sponge/ferment=06:10\"");
    let (step, time) = text.split_once('=').ok_or_else(wrong)?;
    let of = step_name(step).ok_or_else(wrong)?;
    Ok(Happened { of, progress: progress(moment::read_past(time, zone, now)?) })
}

/// "dough/bake=07:00": a step that is fixed; a time of the clock is the last before serving.
pub fn fix(text: &str, begins: Begins, serve: &ZonedDateTime) -> Result<Fix, Failure> {
    let wrong = || Failure::new(format!("“{text}” names no step with its time")).hint("write \"dough/bake=07:00\"");
    let (step, time) = text.split_once('=').ok_or_else(wrong)?;
    let of = step_name(step).ok_or_else(wrong)?;
    Ok(Fix { of, begins, when: moment::read_until(time, serve)? })
}

/// "sponge/ferment", with the formula before it where that is not clear.
fn step_name(text: &str) -> Option<StepName> {
    let parts: Vec<&str> = text.split('/').map(str::trim).collect();
    let (formula, stage, step) = match parts[..] {
        [stage, step] => (None, stage, step),
        [formula, stage, step] => (Some(formula.to_owned()), stage, step),
        _ => return None,
    };
    Some(StepName { formula, stage: stage.to_owned(), step: step.to_owned() })
}

/// "dough/bulk=07:10 risen by half", "dough/mix=22 °C": what was seen of a step that goes on; now, if it does not say when.
pub fn seen(text: &str, zone: &TimeZone, now: &ZonedDateTime) -> Result<Seen, Failure> {
    let wrong = || {
        Failure::new(format!("“{text}” tells nothing that was seen of a step"))
            .hint("write \"dough/bulk=07:10 risen by half\", \"dough/bulk=07:10 risen by 30 %\" or \"dough/mix=22 °C\"")
    };
    let (step, told) = text.split_once('=').ok_or_else(wrong)?;
    let of = step_name(step).ok_or_else(wrong)?;
    let told = told.trim();
    // The time comes first, with its date or without; what was seen has no colon in it.
    let time = told.char_indices().filter(|(at, _)| told[..*at].contains(':')).find(|(_, letter)| *letter == ' ');
    let (when, what) = match time {
        Some((at, _)) => (moment::read_past(&told[..at], zone, now)?, told[at..].trim()),
        None => (now.clone(), told),
    };
    match Condition::read(what) {
        Condition::RisenBy(share) if share > Fraction::ZERO => Ok(Seen { of, what: What::Risen(share, when) }),
        Condition::At(warm) => Ok(Seen { of, what: What::Warm(warm.to) }),
        _ => Err(wrong()),
    }
}

/// "potato-muffins/dough/bulk".
pub fn named(step: &StepName) -> String {
    let formula = step.formula.as_ref().map(|name| format!("{name}/")).unwrap_or_default();
    format!("{formula}{}/{}", step.stage, step.step)
}
