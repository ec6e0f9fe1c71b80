//! The table of a thermometer's logger: which column is the time and which the temperature, in which form and unit, is
//! guessed from the table, told, and never taken for granted where it could be two things.

mod columns;
mod moment;
mod written;

pub use moment::Clock;
pub use written::{as_course, clock, mean, with_room_log};

use crate::read::fields::Reader;
use crate::read::lines::Lines;
use crate::source::Source;
use crate::{Checked, fault};
use columns::{Cells, Columns, guess};
use moment::{Form, Order};
use std::ops::Range;

/// What is said of the table beforehand.
#[derive(Clone, Debug, Default)]
pub struct Asked {
    /// The heading of the column of temperatures.
    pub column: Option<String>,
    /// The scale of its bare numbers.
    pub scale: Option<Scale>,
    /// Whether the month comes before the day.
    pub month_first: bool,
}

/// A scale of temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// A reading of the thermometer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Logged {
    /// Seconds: since the beginning of 1970 by the logger's own clock, since midnight, or since it was started.
    pub seconds: f64,
    /// Degrees Celsius.
    pub celsius: f64,
}

/// What a logger's table holds.
#[derive(Clone, Debug)]
pub struct Log {
    /// Its readings in the order of time.
    pub readings: Vec<Logged>,
    /// What its times count from.
    pub clock: Clock,
    /// What was guessed, in words: the column of times, that of temperatures, and what was left out.
    pub guessed: Vec<String>,
}

/// A table of more rows than this is no day's work.
const MOST_ROWS: usize = 1_000_000;
/// Clocks are set back by an hour once a year.
const SET_BACK: f64 = 3600.0;
/// Temperatures that a kitchen's thermometer shows.
const SHOWN: std::ops::RangeInclusive<f64> = -60.0..=400.0;

/// Reads a logger's table; nothing of it where a cell cannot be read or a column could be two things.
#[must_use]
pub fn read_logger(source: &Source, asked: &Asked) -> Checked<Option<Log>> {
    let mut found = Vec::new();
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let log = read(&mut reader, source, asked);
    Checked { value: log.filter(|_| found.is_empty()), diagnostics: found }
}

fn read(reader: &mut Reader, source: &Source, asked: &Asked) -> Option<Log> {
    let rows: Vec<Cells> = Lines::parted_by(source, columns::delimiter(&source.text)).take(MOST_ROWS + 1).collect();
    if rows.len() > MOST_ROWS {
        let message = format!("the table has more than {MOST_ROWS} rows");
        reader.report(&fault::TOO_MANY_LINES, source.beginning(), message, "let the logger read less often, or part the table");
        return None;
    }
    let columns = guess(reader, source, &rows, asked)?;
    let order = moment::order(rows[columns.begins..].iter().filter_map(|row| columns.time(row)), asked.month_first);
    let mut guessed = columns.in_words(order);
    let (mut readings, mut missing, mut shift) = (Vec::<Logged>::new(), 0, 0.0);
    for row in rows.iter().skip(columns.begins) {
        let Some((time, span)) = columns.time_at(row) else {
            refuse(reader, &columns, source, columns.time, row, "a time");
            continue;
        };
        let cell = row.get(columns.value).map_or("", |(cell, _)| cell.trim());
        if columns::is_missing(cell) {
            missing += 1;
            continue;
        }
        let Some(seconds) = moment::seconds(&time, columns.form, order) else {
            refuse(reader, &columns, source, columns.time, row, "a time like the others");
            continue;
        };
        let celsius = columns.celsius(cell).filter(|celsius| SHOWN.contains(celsius));
        let Some(celsius) = celsius else {
            refuse(reader, &columns, source, columns.value, row, "a temperature");
            continue;
        };
        let seconds = later(readings.last().map(|last| last.seconds), seconds, &mut shift, columns.form);
        if readings.last().is_some_and(|last| seconds < last.seconds) {
            back(reader, source, span);
            return None;
        }
        readings.push(Logged { seconds, celsius });
    }
    if readings.is_empty() && reader.found.is_empty() {
        reader.report(
            &fault::NOTHING_IN_IT,
            source.beginning(),
            "the table holds no reading".to_owned(),
            "is it the logger's own export?",
        );
        return None;
    }
    if missing > 0 {
        guessed.push(format!("{missing} {} without a temperature left out", if missing == 1 { "row" } else { "rows" }));
    }
    if shift > 0.0 && columns.form != Form::Clock {
        guessed.push("the clock was set back by an hour on the way, and the rows after it are put right".to_owned());
    }
    Some(Log { readings, clock: columns.form.clock(), guessed })
}

/// A time of the day that is earlier than the one before is of the next day; a clock may be set back by an hour.
fn later(last: Option<f64>, seconds: f64, shift: &mut f64, form: Form) -> f64 {
    let moved = seconds + *shift;
    match last {
        Some(last) if moved < last && form == Form::Clock => *shift += 86400.0,
        Some(last) if moved < last && *shift == 0.0 && last - moved <= SET_BACK => *shift = SET_BACK,
        _ => {}
    }
    seconds + *shift
}

fn refuse(reader: &mut Reader, columns: &Columns, source: &Source, column: usize, row: &Cells, wanted: &str) {
    let (cell, span) = row.get(column).cloned().unwrap_or_else(|| (String::new(), end(row)));
    let message = format!(
        "row {}, {}: “{}” is no {}",
        line(source, &span),
        columns.called(column),
        cell.trim(),
        wanted.trim_start_matches("a ")
    );
    reader.report(
        &fault::COURSE_UNREADABLE,
        span,
        message,
        "put the cell right, or take the row out; a cell left empty is a reading that is missing",
    );
}

/// The line of the file, counted from one: what an editor shows.
fn line(source: &Source, span: &Range<usize>) -> usize {
    source.text.bytes().take(span.start).filter(|byte| *byte == b'\n').count() + 1
}

fn back(reader: &mut Reader, source: &Source, span: Range<usize>) {
    let message = format!("row {} is earlier than the row before it", line(source, &span));
    let hint = "rows go on in the order of time; if day and month were taken for each other, say --month-first";
    reader.report(&fault::COURSE_UNREADABLE, span, message, hint);
}

fn end(row: &Cells) -> Range<usize> {
    row.last().map_or(0..0, |(_, span)| span.clone())
}

impl Order {
    const fn in_words(self) -> &'static str {
        match self {
            Self::DayFirst => "day before month",
            Self::MonthFirst => "month before day",
            Self::Either => "day before month, though it could be the other way round (--month-first)",
            Self::Told => "",
        }
    }
}
