//! The rows of a table as little documents of TOML, with the cell behind each of their lines.

use crate::read::At;
use crate::read::fields::Reader;
use crate::read::keys::Value as Kind;
use crate::read::lines::Lines;
use crate::source::{MOST_LINES, Source};
use crate::{Diagnostic, Place, fault};
use std::ops::Range;
use std::sync::Arc;

/// A column that a table may have.
#[derive(Clone, Copy)]
pub struct Column {
    /// Its heading.
    pub heading: &'static str,
    /// The table within the row that its key stands in, if it is not the row itself.
    pub within: Option<&'static str>,
    /// The key.
    pub key: &'static str,
    /// What its value may be.
    pub kind: Kind,
    /// Whether a table is of no use without it.
    pub is_required: bool,
}

/// A row of a table.
pub struct Row {
    /// Its cells that are not empty, by their columns.
    pub cells: Vec<(Column, At<String>)>,
    /// Where it stands.
    pub span: Range<usize>,
}

impl Row {
    /// The text of a column.
    pub fn get(&self, heading: &str) -> Option<&At<String>> {
        self.cells.iter().find(|(column, _)| column.heading == heading).map(|(_, cell)| cell)
    }

    /// The row under a heading of TOML such as `[[price]]`, with the place behind each line.
    pub fn document(&self, heading: &str, name: &str, leave_out: &str) -> (String, Vec<Range<usize>>) {
        let mut lines = vec![(heading.to_owned(), self.span.clone())];
        let own = |within: Option<&str>| {
            self.cells
                .iter()
                .filter(move |(column, _)| column.within == within && column.heading != leave_out)
                .map(|(column, cell)| (format!("{} = {}", column.key, value(column.kind, &cell.value)), cell.span.clone()))
                .collect::<Vec<_>>()
        };
        lines.extend(own(None));
        for within in ["per-100-g", "density", "piece"] {
            let inner = own(Some(within));
            if let Some((_, span)) = inner.first() {
                lines.push((format!("[{name}.{within}]"), span.clone()));
                lines.extend(inner);
            }
        }
        let text = lines.iter().map(|(line, _)| format!("{line}\n")).collect();
        (text, lines.into_iter().map(|(_, span)| span).collect())
    }
}

/// A cell as a value of TOML on one line.
pub fn value(kind: Kind, text: &str) -> String {
    let quoted = |text: &str| toml_edit::Value::from(text.replace(['\n', '\r'], " ")).to_string();
    match (kind, text) {
        (Kind::Truth, "true" | "yes") => "true".to_owned(),
        (Kind::Truth, "false" | "no") => "false".to_owned(),
        (Kind::Texts, text) => {
            let items = text.split([';', '|', ',']).map(str::trim).filter(|item| !item.is_empty()).map(quoted);
            format!("[{}]", items.collect::<Vec<_>>().join(", "))
        }
        (Kind::Composition, text) => match text.replace(',', ".").parse::<f64>() {
            Ok(number) if number.is_finite() => number.to_string(),
            _ => quoted(text),
        },
        (_, text) => quoted(text),
    }
}

/// Reads the rows of a table that has these columns; reports headings that it does not know and those that it lacks.
pub fn rows(source: &Source, columns: &[Column], found: &mut Vec<Diagnostic>) -> Vec<Row> {
    let mut reader = Reader { file: &source.file, found, unread: Vec::new(), quiets: Vec::new() };
    let mut lines = Lines::of(source);
    let heading = lines.next().unwrap_or_default();
    let known: Vec<Option<Column>> = heading.iter().map(|(cell, span)| column(&mut reader, cell, span, columns)).collect();
    for (at, one) in known.iter().enumerate() {
        let Some(one) = one else { continue };
        if known[..at].iter().flatten().any(|other| other.heading == one.heading) {
            let message = format!("two columns are called “{}”", one.heading);
            reader.report(&fault::NAME_TWICE, heading[at].1.clone(), message, "keep one of them");
        }
    }
    for lacking in columns.iter().filter(|one| one.is_required) {
        if !known.iter().flatten().any(|column| column.heading == lacking.heading) {
            let message = format!("the table has no column “{}”", lacking.heading);
            let names: Vec<&str> = columns.iter().take(12).map(|column| column.heading).collect();
            let hint = format!("begin it with a line of headings, such as: {}", names.join(","));
            reader.report(&fault::KEY_MISSING, source.beginning(), message, hint);
        }
    }
    let mut rows = Vec::new();
    for line in lines {
        if rows.len() >= MOST_LINES {
            let message = format!("the table has more than {MOST_LINES} rows");
            let span = line.first().map_or(0..0, |(_, span)| span.clone());
            reader.report(&fault::TOO_MANY_LINES, span, message, "bring it in in parts");
            break;
        }
        rows.extend(row(&mut reader, &known, line));
    }
    rows
}

fn column(reader: &mut Reader, cell: &str, span: &Range<usize>, columns: &[Column]) -> Option<Column> {
    let name = cell.trim_start_matches('\u{feff}').trim();
    let found = columns.iter().find(|column| column.heading.eq_ignore_ascii_case(name)).copied();
    if found.is_none() {
        let known: Vec<&str> = columns.iter().map(|column| column.heading).collect();
        let message = format!("the table has a column “{name}”, which is not known");
        reader.report_unknown(&fault::UNKNOWN_KEY, At::new(name, span.clone()), message, &known);
    }
    found
}

/// A row's cells; an empty cell says nothing, a line without any is no row.
fn row(reader: &mut Reader, columns: &[Option<Column>], line: Vec<(String, Range<usize>)>) -> Option<Row> {
    let span = line.iter().find(|(cell, _)| !cell.trim().is_empty()).map(|(_, span)| span.clone())?;
    let mut cells = Vec::new();
    for (at, (cell, span)) in line.into_iter().enumerate() {
        let text = plain(&cell);
        match columns.get(at) {
            _ if text.is_empty() => {}
            Some(Some(column)) => cells.push((*column, At::new(text.to_owned(), span))),
            // Its heading was told already.
            Some(None) => {}
            None => {
                let message = format!("“{text}” stands in a column without a heading");
                let hint = "a text with commas in it stands in quotes; a decimal comma needs columns parted by semicolons";
                reader.report(&fault::WRONG_KIND, span, message, hint);
            }
        }
    }
    Some(Row { cells, span })
}

/// A cell without the apostrophe that keeps spreadsheets from taking it for a command.
fn plain(cell: &str) -> &str {
    let text = cell.trim();
    match text.strip_prefix('\'') {
        Some(rest) if rest.starts_with(['=', '+', '-', '@']) => rest,
        _ => text,
    }
}

/// What is wrong with a row's document, told at its cells.
pub fn at_cells(wrong: Vec<Diagnostic>, text: &str, cells: &[Range<usize>], file: &Arc<str>) -> Vec<Diagnostic> {
    let told = wrong.into_iter().map(|one| {
        let line = text[..one.place.span.start.min(text.len())].matches('\n').count();
        let span = cells.get(line).cloned().unwrap_or(0..0);
        Diagnostic { place: Place { file: Arc::clone(file), span }, fix: None, ..one }
    });
    told.collect()
}
