//! Formulas side by side for the terminal: a column a formula, and a word for how much they differ.

use super::courses;
use crate::sheet::RULED;
use crate::words::wrap;
use bench::compare::{Comparison, Difference, Part, Row, Unit};
use bench::forecast::UNCALIBRATED;
use comfy_table::{CellAlignment, ContentArrangement, Table};
use formula::Origin;
use quantity::{Between, TimeSpan, print};
use std::collections::BTreeSet;

/// The comparison as text of that width.
#[must_use]
pub fn text(comparison: &Comparison, width: usize) -> String {
    let title = comparison.columns.join(" / ");
    let mut out = wrap(&title, width);
    for part in &comparison.parts {
        out.push_str(&format!("\n{}\n{}\n", heading(part), table(&comparison.columns, part, width, Difference::None)));
        out.push_str(&courses(&comparison.columns, part, width));
    }
    out.push_str(&wrap(
        &format!(
            "\nPercentages are shares of all flour of a component. Slight is less than is noticed, clear (*) is noticed, large (**) makes another product of it (common practice, no source).{}",
            times(comparison)
        ),
        width,
    ));
    out
}

/// Whose times they are: the books', or those of the kitchen's own trials.
pub(super) fn times(comparison: &Comparison) -> String {
    let rows = comparison.parts.iter().flat_map(|part| &part.rows).filter(|row| row.unit == Unit::Hours);
    let origins: Vec<&Origin> = rows.flat_map(|row| row.cells.iter().flatten()).map(|cell| &cell.origin).collect();
    let learnt: BTreeSet<&str> = origins.iter().filter_map(|one| trials(one)).collect();
    let mut words = String::new();
    if !learnt.is_empty() {
        let by: Vec<&str> = learnt.into_iter().collect();
        words.push_str(&format!(" Times go by this kitchen's own trials: {}.", by.join("; ")));
    }
    if origins.iter().any(|one| trials(one).is_none()) {
        let off = print::number(UNCALIBRATED * 100.0, 0);
        let which = if words.is_empty() { "Times" } else { "Other times" };
        words.push_str(&format!(
            " {which} are those of the books: a kitchen that has logged no rise yet may be {off} % quicker or slower."
        ));
    }
    words
}

/// The trials that a figure was learnt from, if it was.
fn trials(origin: &Origin) -> Option<&str> {
    if let Origin::Measured(by) = origin { Some(by) } else { None }
}

/// What a part is of.
pub fn heading(part: &Part) -> String {
    match &part.component {
        Some(component) => format!("{component}: {}", part.title),
        None => print::capital(part.title),
    }
}

/// The rows of a part that differ at least so much.
#[must_use]
pub fn table(columns: &[String], part: &Part, width: usize, least: Difference) -> String {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width.min(u16::MAX.into()) as u16);
    let mut head = vec![String::new()];
    head.extend(columns.iter().cloned());
    head.extend(["apart".to_owned(), "difference".to_owned()]);
    let numbers = head.len() - 1;
    table.set_header(head);
    for row in part.rows.iter().filter(|row| row.difference >= least) {
        table.add_row(cells(row, columns.len()));
    }
    for column in 1..numbers {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table.trim_fmt()
}

pub(super) fn cells(row: &Row, columns: usize) -> Vec<String> {
    let mut cells = vec![row.title.clone()];
    cells.extend(row.cells.iter().map(|cell| cell.as_ref().map_or_else(|| "–".to_owned(), |cell| plain(cell.value, row.unit))));
    let is_pair = columns == 2;
    let sign = if is_pair && row.apart > 0.0 { "+" } else { "" };
    let apart = plain(row.apart, row.unit);
    let is_same = row.difference == Difference::None || row.unit.rounded(row.apart) == 0.0;
    cells.push(if is_same { String::new() } else { format!("{sign}{apart}") });
    cells.push(mark(row.difference).to_owned());
    cells
}

/// The word, and a sign that stands out in a column even in black and white.
const fn mark(difference: Difference) -> &'static str {
    match difference {
        Difference::None => "",
        Difference::Slight => "slight",
        Difference::Clear => "clear *",
        Difference::Large => "large **",
    }
}

pub(super) fn plain(value: f64, unit: Unit) -> String {
    if unit == Unit::Hours {
        let sign = if value < 0.0 { "\u{2212}" } else { "" };
        let time = print::rounded_time(Between::just(TimeSpan::hours(value.abs())));
        return format!("{sign}{}", print::time(time));
    }
    let number = print::number(value, unit.decimals(value));
    match unit {
        Unit::Pieces => number,
        unit => format!("{number}\u{a0}{}", unit.symbol()),
    }
}
