//! Figures of the command line, each with what to write where it is none.

use crate::failure::Failure;
use quantity::{Fraction, Kind, Length, Measure, SpoonSystem, TimeSpan, read_number};

fn measure(text: &str, kind: Kind, wanted: &str) -> Result<Measure, Failure> {
    let wrong = || Failure::new(format!("“{text}” is no {wanted}"));
    let hint = match kind {
        Kind::Share => "write it in percent: \"30 %\"",
        Kind::Time => "write it with its unit: \"12 h\", \"90 min\"",
        _ => "write it with its unit: \"1800 m\"",
    };
    let measure: Measure = text.parse().map_err(|_| wrong().hint(hint))?;
    if measure.unit.kind() == kind { Ok(measure) } else { Err(wrong().hint(hint)) }
}

/// A figure of the command line: a share of at most ten wholes.
pub fn percent(text: &str) -> Result<Fraction, Failure> {
    let measure = measure(text, Kind::Share, "percentage")?;
    let share = measure.share(SpoonSystem::Metric).map(|range| range.to);
    share.filter(|share| *share <= Fraction::percent(1000.0)).ok_or_else(|| Failure::new(format!("“{text}” is no percentage")))
}

/// A figure of the command line: of a range its middle.
pub fn time(text: &str) -> Result<TimeSpan, Failure> {
    let measure = measure(text, Kind::Time, "time")?;
    let range = measure.time(SpoonSystem::Metric).ok_or_else(|| Failure::new(format!("“{text}” is no time")))?;
    Ok((range.from + range.to) * 0.5)
}

/// A figure of the command line: a height above the sea.
pub fn length(text: &str) -> Result<Length, Failure> {
    let measure = measure(text, Kind::Length, "altitude")?;
    measure.length(SpoonSystem::Metric).map(|range| range.to).ok_or_else(|| Failure::new(format!("“{text}” is no altitude")))
}

/// A figure of the command line: above nothing.
pub fn count(text: &str) -> Result<f64, Failure> {
    match read_number(text) {
        Ok((number, "")) if number > 0.0 && number <= 10_000.0 => Ok(number),
        _ => Err(Failure::new(format!("“{text}” is no count")).hint("a number above nothing is wanted")),
    }
}
