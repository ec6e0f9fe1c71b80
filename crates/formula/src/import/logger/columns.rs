//! Which column of a logger's table is the time, which the temperature.

use super::moment::{Form, Order, kinds};
use super::{Asked, Scale};
use crate::fault;
use crate::read::At;
use crate::read::fields::Reader;
use crate::source::Source;
use std::ops::Range;

/// The cells of a row, each with its place.
pub type Cells = Vec<(String, Range<usize>)>;

/// What was guessed of a table.
pub struct Columns {
    /// The first row that holds a reading.
    pub begins: usize,
    /// The column of the times, or of the dates.
    pub time: usize,
    /// The column of the times of the day, where dates stand apart.
    clock: Option<usize>,
    /// The form of the times.
    pub form: Form,
    /// The column of the temperatures.
    pub value: usize,
    /// Their scale, and how that is known.
    scale: Scale,
    known: &'static str,
    headings: Vec<String>,
    comma: bool,
}

/// The sign that parts cells: the one by which most lines have more than one cell, alike.
pub fn delimiter(text: &str) -> u8 {
    let lines: Vec<&str> = text.lines().filter(|line| !line.trim().is_empty()).take(200).collect();
    let alike = |sign: char| {
        let counts: Vec<usize> = lines.iter().map(|line| line.matches(sign).count()).collect();
        let usual = counts.get(counts.len() / 2).copied().unwrap_or(0);
        if usual == 0 { 0 } else { counts.iter().filter(|count| **count == usual).count() }
    };
    // Commas last among equals: where cells are parted by semicolons, they are in the figures.
    let best = [';', '\t', ','].into_iter().rev().max_by_key(|sign| alike(*sign)).unwrap_or(',');
    best as u8
}

/// A cell of a reading that is missing.
pub fn is_missing(cell: &str) -> bool {
    matches!(cell.trim().to_ascii_lowercase().as_str(), "" | "-" | "--" | "---" | "n/a" | "na" | "nan" | "null" | "err" | "error")
}

/// A number with a decimal point or comma, and what stands behind it.
fn number(cell: &str) -> Option<(f64, &str)> {
    let cell = cell.trim();
    let end = cell.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+' | '−'))).unwrap_or(cell.len());
    let (digits, unit) = cell.split_at(end);
    let value = digits.replace('−', "-").replace(',', ".").parse::<f64>().ok()?;
    Some((value, unit.trim()))
}

fn scale_of(text: &str) -> Option<Scale> {
    let small = text.to_lowercase();
    let has = |words: &[&str]| words.iter().any(|word| small.contains(word)) || words.contains(&small.trim());
    if has(&["°f", "(f)", "[f]", "fahrenheit", "degf", "deg f", "_f"]) || small.trim() == "f" {
        Some(Scale::Fahrenheit)
    } else if has(&["°c", "(c)", "[c]", "celsius", "degc", "deg c", "℃", "_c"]) || small.trim() == "c" {
        Some(Scale::Celsius)
    } else {
        None
    }
}

impl Columns {
    /// The time of a row, its date and time of the day together.
    pub fn time(&self, row: &Cells) -> Option<String> {
        self.time_at(row).map(|(time, _)| time)
    }

    /// The same with its place.
    pub fn time_at(&self, row: &Cells) -> Option<(String, Range<usize>)> {
        let (cell, span) = row.get(self.time)?;
        let clock = self.clock.and_then(|clock| row.get(clock)).map(|(cell, _)| format!(" {cell}")).unwrap_or_default();
        (!cell.trim().is_empty()).then(|| (format!("{cell}{clock}"), span.clone()))
    }

    /// Degrees Celsius of a cell.
    pub fn celsius(&self, cell: &str) -> Option<f64> {
        let (value, unit) = number(cell)?;
        let scale = if unit.is_empty() { self.scale } else { scale_of(unit)? };
        Some(match scale {
            Scale::Celsius => value,
            Scale::Fahrenheit => (value - 32.0) / 1.8,
        })
    }

    /// What a column is called.
    pub fn called(&self, column: usize) -> String {
        match self.headings.get(column).map(|heading| heading.trim()).filter(|heading| !heading.is_empty()) {
            Some(heading) => format!("column “{heading}”"),
            None => format!("column {}", column + 1),
        }
    }

    /// What was guessed, in words.
    pub fn in_words(&self, order: Order) -> Vec<String> {
        let form = match self.form {
            Form::Date => "date and time of the day",
            Form::Clock => "time of the day",
            Form::Unix(_) => "seconds since 1970, universal time",
            Form::Elapsed(1.0) => "seconds since the start",
            Form::Elapsed(60.0) => "minutes since the start",
            Form::Elapsed(_) => "hours since the start",
        };
        let order = if order.in_words().is_empty() { String::new() } else { format!(", {}", order.in_words()) };
        let apart = self.clock.map(|clock| format!(" and {}", self.called(clock))).unwrap_or_default();
        let scale = if self.scale == Scale::Celsius { "°C" } else { "°F" };
        let comma = if self.comma { ", decimal commas" } else { "" };
        vec![
            format!("time: {}{apart}, {form}{order}", self.called(self.time)),
            format!("temperature: {}, {scale} {}{comma}", self.called(self.value), self.known),
        ]
    }
}

/// Finds the columns; reports what is missing, or could be two things.
pub fn guess(reader: &mut Reader, source: &Source, rows: &[Cells], asked: &Asked) -> Option<Columns> {
    let begins = rows.iter().position(is_reading);
    let Some(begins) = begins else {
        let hint = "a row holds a time and a temperature, such as: 2026-11-14 18:20;21.5";
        reader.report(&fault::COURSE_UNREADABLE, source.beginning(), "no row holds a time and a number".to_owned(), hint);
        return None;
    };
    let headings: Vec<String> = match begins.checked_sub(1).and_then(|head| rows.get(head)) {
        Some(row) if row.len() >= rows[begins].len().min(2) => {
            row.iter().map(|(cell, _)| cell.trim_start_matches('\u{feff}').to_owned()).collect()
        }
        _ => Vec::new(),
    };
    let sample = &rows[begins..rows.len().min(begins + 500)];
    let (time, clock, form) = times(sample, &headings)?;
    let value = values(reader, source, sample, &headings, &[Some(time), clock], asked)?;
    let cells = || sample.iter().filter_map(|row| row.get(value)).map(|(cell, _)| cell.as_str());
    let heading = headings.get(value).map_or("", String::as_str);
    let in_cells = || cells().filter_map(number).find_map(|(_, unit)| scale_of(unit));
    let (scale, known) = match (asked.scale, scale_of(heading), in_cells()) {
        (Some(scale), ..) => (scale, "as you say"),
        (None, Some(scale), _) => (scale, "by its heading"),
        (None, None, Some(scale)) => (scale, "by its cells"),
        (None, None, None) => {
            let mut all: Vec<f64> = cells().filter_map(number).map(|(value, _)| value).collect();
            all.sort_by(f64::total_cmp);
            // Half of a kitchen's readings above 45 °C would be an oven's; of the Fahrenheit scale they are a cool cellar's.
            let middle = all.get(all.len() / 2).copied().unwrap_or(0.0);
            let scale = if (45.0..=110.0).contains(&middle) { Scale::Fahrenheit } else { Scale::Celsius };
            (scale, "by the size of its figures, as no unit is named")
        }
    };
    let comma = cells().any(|cell| cell.contains(','));
    Some(Columns { begins, time, clock, form, value, scale, known, headings, comma })
}

/// Whether a row could be one of readings: a time, or a bare number, before a number.
fn is_reading(row: &Cells) -> bool {
    let is_time = |cell: &str| kinds(cell).0 || kinds(cell).1;
    let time =
        row.iter().position(|(cell, _)| is_time(cell)).or_else(|| row.first().and_then(|(cell, _)| number(cell)).map(|_| 0));
    time.is_some_and(|time| {
        row.iter()
            .enumerate()
            .any(|(at, (cell, _))| at != time && !is_time(cell) && (number(cell).is_some() || is_missing(cell) && row.len() == 2))
    })
}

/// The column of times, one of the times of the day where dates stand apart, and their form.
fn times(sample: &[Cells], headings: &[String]) -> Option<(usize, Option<usize>, Form)> {
    let width = sample.iter().map(Vec::len).max().unwrap_or(0);
    let most = |is: &dyn Fn(&str) -> bool, column: usize| {
        let fits = sample.iter().filter(|row| row.get(column).is_some_and(|(cell, _)| is(cell))).count();
        fits * 2 >= sample.len()
    };
    let find = |is: &dyn Fn(&str) -> bool| (0..width).find(|column| most(is, *column));
    if let Some(both) = find(&|cell| kinds(cell) == (true, true)) {
        return Some((both, None, Form::Date));
    }
    let clock = find(&|cell| kinds(cell) == (false, true));
    if let Some(date) = find(&|cell| kinds(cell) == (true, false)) {
        return Some((date, clock, Form::Date));
    }
    if let Some(clock) = clock {
        return Some((clock, None, Form::Clock));
    }
    let named = |column: &usize| {
        let heading = headings.get(*column).map(|heading| heading.to_lowercase()).unwrap_or_default();
        ["time", "elapsed", "zeit", "temps", "min", "sec"].iter().any(|word| heading.contains(word))
            && !heading.contains("temper")
    };
    let column = (0..width).find(named).unwrap_or(0);
    let heading = headings.get(column).map(|heading| heading.to_lowercase()).unwrap_or_default();
    let first = sample.first()?.get(column).and_then(|(cell, _)| number(cell))?.0;
    let unit = match first {
        first if first >= 1e12 => return Some((column, None, Form::Unix(0.001))),
        first if first >= 1e9 => return Some((column, None, Form::Unix(1.0))),
        _ if heading.contains("min") => 60.0,
        _ if heading.contains("(h") || heading.contains("hour") || heading.contains("[h") => 3600.0,
        _ => 1.0,
    };
    Some((column, None, Form::Elapsed(unit)))
}

/// The column of temperatures.
fn values(
    reader: &mut Reader,
    source: &Source,
    sample: &[Cells],
    headings: &[String],
    times: &[Option<usize>],
    asked: &Asked,
) -> Option<usize> {
    if let Some(wanted) = &asked.column {
        let same = |heading: &String| heading.trim().eq_ignore_ascii_case(wanted.trim());
        let found = headings
            .iter()
            .position(same)
            .or_else(|| wanted.parse::<usize>().ok().filter(|n| (1..=64).contains(n)).map(|n| n - 1));
        if found.is_none() {
            let known: Vec<&str> = headings.iter().map(|heading| heading.trim()).collect();
            let message = format!("the table has no column “{wanted}”");
            reader.report_unknown(&fault::COURSE_UNREADABLE, At::new(wanted, source.beginning()), message, &known);
        }
        return found;
    }
    let width = sample.iter().map(Vec::len).max().unwrap_or(0);
    let is_figures = |column: usize| {
        let cells: Vec<&str> = sample.iter().filter_map(|row| row.get(column)).map(|(cell, _)| cell.as_str()).collect();
        let told: Vec<f64> = cells.iter().filter_map(|cell| number(cell)).map(|(value, _)| value).collect();
        let counts = told.len() > 2 && told.windows(2).all(|two| two[1] - two[0] == 1.0);
        let either = cells.iter().filter(|cell| number(cell).is_some() || is_missing(cell)).count();
        !told.is_empty() && !counts && either * 2 >= sample.len()
    };
    let heading = |column: usize| headings.get(column).map(|heading| heading.to_lowercase()).unwrap_or_default();
    let is_other = |column: usize| {
        ["%", "humid", "rh", "dew", "batter", "volt", "press", "hpa", "lux", "feucht"]
            .iter()
            .any(|word| heading(column).contains(word))
    };
    let all: Vec<usize> =
        (0..width).filter(|column| !times.contains(&Some(*column)) && is_figures(*column) && !is_other(*column)).collect();
    let is_named = |column: &usize| heading(*column).contains("temp") || scale_of(&heading(*column)).is_some();
    let named: Vec<usize> = all.iter().copied().filter(is_named).collect();
    match (&named[..], &all[..]) {
        ([one], _) | ([], [one]) => Some(*one),
        (several, others) => {
            let of = if several.is_empty() { others } else { several };
            let names: Vec<String> = of
                .iter()
                .map(|column| headings.get(*column).map_or_else(|| (column + 1).to_string(), |heading| heading.trim().to_owned()))
                .collect();
            let (message, hint) = if of.is_empty() {
                ("no column holds temperatures".to_owned(), "is it the logger's own export?".to_owned())
            } else {
                (
                    format!("{} columns could be the temperature", of.len()),
                    format!("say --column with one of: {}", names.join(", ")),
                )
            };
            reader.report(&fault::COURSE_UNREADABLE, source.beginning(), message, hint);
            None
        }
    }
}
