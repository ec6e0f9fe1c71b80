//! The course of a rise as a table of comma-separated values: time, height or volume, temperature.

use super::At;
use super::amount::measure;
use super::fields::Reader;
use super::lines::Lines;
use super::trial::{Reading, takes_no_room};
use crate::source::{MOST_LINES, Source};
use crate::{Checked, fault};
use quantity::{Kind, Measure, SpoonSystem};
use std::ops::Range;

/// The columns that are known, and what each measures.
const COLUMNS: [(&str, Kind); 4] =
    [("time", Kind::Time), ("height", Kind::Length), ("volume", Kind::Volume), ("temperature", Kind::Temperature)];

/// A column: which of the known ones, and the unit its heading names.
struct Column {
    name: &'static str,
    kind: Kind,
    unit: String,
}

/// Reads a course. A heading may name the unit of its bare numbers: `time (min)`; a cell may have its own.
#[must_use]
pub fn read_course(source: &Source) -> Checked<Vec<Reading>> {
    let mut found = Vec::new();
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let mut lines = Lines::of(source);
    let columns: Vec<Option<Column>> = match lines.next() {
        Some(heading) => heading.iter().map(|(cell, span)| column(&mut reader, cell, span.clone())).collect(),
        None => Vec::new(),
    };
    let has = |name: &str| columns.iter().flatten().any(|column| column.name == name);
    let mut readings = Vec::new();
    if !has("time") || !(has("height") || has("volume") || has("temperature")) {
        reader.report(
            &fault::COURSE_UNREADABLE,
            source.beginning(),
            "a course needs a column “time”, and one of height, volume or temperature".to_owned(),
            "begin the file with a line of headings, such as: time (min),height (mm),temperature (°C)",
        );
        return Checked { value: readings, diagnostics: found };
    }
    for line in lines.take(MOST_LINES + 1) {
        readings.extend(read_line(&mut reader, &columns, &line));
    }
    Checked { value: readings, diagnostics: found }
}

/// "height (mm)": a known column and its unit.
fn column(reader: &mut Reader, cell: &str, span: Range<usize>) -> Option<Column> {
    let cell = cell.trim_start_matches('\u{feff}').trim();
    let (name, unit) = match cell.split_once(['(', '[']) {
        Some((name, unit)) => (name.trim(), unit.trim_end_matches([')', ']']).trim()),
        None => (cell, ""),
    };
    let known = COLUMNS.iter().find(|(known, _)| name.eq_ignore_ascii_case(known));
    let Some((name, kind)) = known else {
        let names: Vec<&str> = COLUMNS.iter().map(|(name, _)| *name).collect();
        let message = format!("a course has no column “{name}”");
        reader.report_unknown(&fault::COURSE_UNREADABLE, At::new(name, span), message, &names);
        return None;
    };
    Some(Column { name, kind: *kind, unit: unit.to_owned() })
}

/// A line's reading; a line without a time is told of and left out, an empty cell is only missing.
fn read_line(reader: &mut Reader, columns: &[Option<Column>], line: &[(String, Range<usize>)]) -> Option<Reading> {
    let mut reading = Reading::default();
    let mut time = None;
    for (column, (cell, span)) in columns.iter().zip(line) {
        let Some(column) = column.as_ref().filter(|_| !cell.trim().is_empty()) else { continue };
        let cell = cell.trim();
        let text = if cell.parse::<f64>().is_ok() { format!("{cell} {}", column.unit) } else { cell.to_owned() };
        let Some(value) = measure(reader, &At::new(text.as_str(), span.clone()), &[column.kind]) else { continue };
        match column.name {
            "time" => time = value.time(SpoonSystem::Metric).map(|time| time.to),
            "height" => reading.height = value.length(SpoonSystem::Metric).map(|length| length.to),
            "volume" => reading.volume = value.volume(SpoonSystem::Metric).map(|volume| volume.to),
            _ => reading.temperature = value.temperature().map(|temperature| temperature.to),
        }
        if is_nothing(column.kind, &value) {
            takes_no_room(reader, span.clone());
            (reading.height, reading.volume) = (None, None);
        }
    }
    if time.is_none() && line.iter().any(|(cell, _)| !cell.trim().is_empty()) {
        let span = line.first().map_or(0..0, |(_, span)| span.clone());
        reader.report(
            &fault::COURSE_UNREADABLE,
            span,
            "this line has no time".to_owned(),
            "say when it was read, or take it out",
        );
    }
    Some(Reading { after: time?, ..reading })
}

fn is_nothing(kind: Kind, value: &Measure) -> bool {
    matches!(kind, Kind::Length | Kind::Volume) && value.value.to <= 0.0
}
