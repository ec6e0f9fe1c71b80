//! What a thermometer's logger wrote, made ready for a trial: for a command as for a page.

use crate::asked::time;
use crate::failure::Failure;
use crate::logbook::Logbook;
use formula::import::{Clock, Log, as_course, clock, mean};
use formula::logging::{Entry, Figure, Part};
use jiff::civil::DateTime;
use quantity::{Between, Temperature, TimeSpan, print};

/// What is asked of a table that belongs to a step of a trial.
pub struct Wanted<'w> {
    /// The step: "dough/bulk".
    pub step: &'w str,
    /// When it began by the logger's clock; the first row, if nothing is said.
    pub begins: Option<&'w str>,
    /// How long it lasted; as the trial says, or to the last row.
    pub lasts: Option<&'w str>,
    /// Over which time readings are averaged.
    pub every: &'w str,
    /// Whether the thermometer hung in the air.
    pub of_the_air: bool,
}

/// What would be noted of it.
pub struct Ready {
    /// What is made of the table, a line each.
    pub told: Vec<String>,
    /// The entry of the trial.
    pub entry: Entry,
    /// The file of readings beside the trial, and what it says; none of the air.
    pub course: Option<(String, String)>,
}

/// So many rows are shown of what would be written.
const SHOWN: usize = 5;

/// Makes a logger's table ready for a trial; nothing is written.
pub fn ready(logbook: &Logbook, log: &Log, wanted: &Wanted) -> Result<Ready, Failure> {
    let step = wanted.step;
    let (figure, named, is_first) = waiting(logbook, step)?;
    let rises = &logbook.trial()?.rises;
    let rise =
        rises.iter().find(|rise| rise.of.stage.value == figure.stage && rise.step.map_or(is_first, |other| other == named));
    let lasts = match wanted.lasts {
        Some(text) => Some(time(text)?),
        None => rise.and_then(|rise| rise.lasted),
    };
    let begins = wanted.begins.map(|text| begins(text, log)).transpose()?;
    let first = log.span().map_or(0.0, |span| span.0);
    let from = begins.map_or(first, |begins| if log.clock == Clock::Started { 0.0 } else { begins });
    let readings = log.part(from, lasts.map(TimeSpan::as_seconds));
    let (Some(middle), Some(last)) = (mean(&readings), readings.last()) else {
        let (from, to) = log.span().unwrap_or_default();
        let failure = Failure::new("the logger wrote nothing while that step went on");
        return Err(failure.hint(format!("its rows are from {} to {}", clock(from, log.clock), clock(to, log.clock))));
    };
    let lasted = print::time(print::rounded_time(Between::just(TimeSpan::seconds(last.seconds - from))));
    let mut told = guessed(log);
    told.push(format!("of {step}: {} rows, {lasted} long", readings.len()));
    if wanted.of_the_air {
        let room = print::celsius(Between::just(Temperature::celsius((middle * 10.0).round() / 10.0)));
        told.push(format!("the room of {step}: {room}, the mean"));
        let entry = Entry::Figure(Figure { key: "room", ..figure }, room.replace('\u{a0}', " "));
        return Ok(Ready { told, entry, course: None });
    }
    let file = format!("{}-{}-{}.csv", logbook.name, figure.stage, named.word());
    let course = as_course(&readings, from, time(wanted.every)?.as_seconds().max(1.0));
    Ok(Ready { told, entry: Entry::Course(figure, file.clone()), course: Some((file, course)) })
}

/// The waiting step of that name, and whether it is its stage's first.
fn waiting(logbook: &Logbook, step: &str) -> Result<(Figure, formula::read::StepSeen, bool), Failure> {
    let formula = logbook.formula()?;
    let named = |key: &str| Figure::read(&format!("{step}/{key}"), "1", &formula);
    // A step that does not wait is found too, and told of.
    let found = named("lasted").or_else(|why| named("temperature").or_else(|_| named("core")).map_err(|_| why));
    let (figure, _) = found.map_err(Failure::from)?;
    let Part::Rise(named, is_first) = figure.part else {
        return Err(Failure::new(format!("“{step}” is no waiting step")).hint("readings are of a step in which something rises"));
    };
    Ok((figure, named, is_first))
}

/// The file of readings that the entry's step has already.
pub fn other_course(logbook: &Logbook, entry: &Entry) -> Option<String> {
    let Entry::Course(figure, _) = entry else { return None };
    let name = figure.name().replace("/lasted", "/course");
    formula::logging::figures(logbook.text())
        .into_iter()
        .find(|(other, _)| publish::logged::is_same_figure(&name, other))
        .map(|(_, file)| file)
}

/// A moment by the logger's clock, in its own seconds.
pub fn begins(text: &str, log: &Log) -> Result<f64, Failure> {
    let wrong =
        || Failure::new(format!("“{text}” is no moment of the logger's clock")).hint("write \"2026-11-15 08:20\", or \"08:20\"");
    let of_day = |text: &str| crate::asked::time_of_day(text).map(TimeSpan::as_seconds);
    if !text.trim().contains([' ', 'T']) {
        let seconds = of_day(text)?;
        let first = log.span().map_or(0.0, |span| span.0);
        let midnight = (first / 86400.0).floor() * 86400.0;
        let today = midnight + seconds;
        // The first time after the log begins that the clock shows that; a minute before counts as at once.
        return Ok(if today + 60.0 >= first { today } else { today + 86400.0 });
    }
    let moment: DateTime = text.trim().parse().map_err(|_| wrong())?;
    let utc = jiff::tz::TimeZone::UTC.to_timestamp(moment).map_err(|_| wrong())?;
    Ok(utc.as_second() as f64)
}

/// What was guessed of a table, and what it holds.
pub fn guessed(log: &Log) -> Vec<String> {
    let celsius = log.readings.iter().map(|one| one.celsius);
    let (least, most) = (celsius.clone().fold(f64::INFINITY, f64::min), celsius.fold(f64::NEG_INFINITY, f64::max));
    let (from, to) = log.span().unwrap_or_default();
    let when = match log.clock {
        Clock::Started => format!("{} long", print::time(print::rounded_time(Between::just(TimeSpan::seconds(to - from))))),
        clocked => format!("{} to {}", clock(from, clocked), clock(to, clocked)),
    };
    let mut lines = log.guessed.clone();
    lines.push(format!("{} readings, {when}, {} to {} °C", log.readings.len(), print::number(least, 1), print::number(most, 1)));
    lines
}

/// The first rows of what would be written, and how many follow.
pub fn head(text: &str) -> String {
    let lines: Vec<&str> = text.lines().collect();
    let mut out: Vec<String> = lines.iter().take(SHOWN + 1).map(|line| format!("  {line}")).collect();
    if let Some(more) = lines.len().checked_sub(SHOWN + 1).filter(|more| *more > 0) {
        out.push(format!("  … {more} more"));
    }
    out.join("\n")
}
