//! What changed from one revision of a formula to the next, in a line.

use super::text::plain;
use bench::compare::{Comparison, Difference, Row};
use std::cmp::Reverse;

/// The changes of the first formula into the second, the weightiest first; of many, so many and how many more.
#[must_use]
pub fn changes(comparison: &Comparison, most: usize) -> String {
    // The figures of the overall formula follow from its ingredients, which are told.
    let parts = comparison.parts.iter().filter(|part| part.title != "figures");
    let rows = parts.flat_map(|part| {
        let component = part.component.as_ref().filter(|_| part.title != "overall formula");
        part.rows.iter().map(move |row| (component, row))
    });
    let mut changed: Vec<(Option<&String>, &Row)> = rows.filter(|(_, row)| is_changed(row)).collect();
    changed.sort_by_key(|(_, row)| Reverse(row.difference));
    let mut told: Vec<String> = changed.into_iter().map(|(component, row)| in_words(row, component)).collect();
    let more = told.len().saturating_sub(most);
    told.truncate(most);
    let mut words = told.join("; ");
    if more > 0 {
        words.push_str(&format!("; and {more} more"));
    }
    words
}

fn is_changed(row: &Row) -> bool {
    let [before, after] = &row.cells[..] else { return false };
    row.difference > Difference::None || before.is_some() != after.is_some()
}

fn in_words(row: &Row, component: Option<&String>) -> String {
    let cell = |n: usize| row.cells.get(n).and_then(Option::as_ref).map(|cell| plain(cell.value, row.unit));
    let title = match component {
        Some(component) => format!("{component}, {}", row.title),
        None => row.title.clone(),
    };
    match (cell(0), cell(1)) {
        (Some(before), Some(after)) => format!("{title} {before} → {after}"),
        (None, Some(after)) => format!("{title} {after} comes in"),
        (Some(before), None) => format!("{title} {before} goes out"),
        (None, None) => title,
    }
}
