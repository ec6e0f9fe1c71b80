//! What an exchange changes, for the terminal: lines, percentages, times, and what cannot be kept.

use crate::comparison;
use crate::outlook::known;
use crate::sheet::RULED;
use crate::words::wrap;
use bench::compare::Difference;
use bench::exchange::{ChangedLine, Exchanged, NewTime};
use comfy_table::{CellAlignment, ContentArrangement, Table};
use quantity::{Fraction, Mass, print};

/// What an exchange changes, as text of that width.
#[must_use]
pub fn text(exchanged: &Exchanged, width: usize) -> String {
    let mut out = changes(exchanged, width);
    let grounds: Vec<String> = exchanged.rests_on.iter().filter_map(known::ground).collect();
    list(&mut out, "Where the figures come from", &grounds, width);
    out
}

/// The same without its equations, which stand with those of the answer that asked for it.
#[must_use]
pub fn changes(exchanged: &Exchanged, width: usize) -> String {
    let title = &exchanged.formula.head.title;
    let mut out = format!("{title}\n{}\n", "═".repeat(title.chars().count()));
    if exchanged.lines.is_empty() {
        out.push_str("\nNo weight changes.\n");
    } else {
        out.push_str(&format!("\nLines\n{}\n", lines(&exchanged.lines, width)));
    }
    for part in &exchanged.comparison.parts {
        if part.rows.iter().any(|row| row.difference > Difference::None) {
            let table = comparison::table(&exchanged.comparison.columns, part, width, Difference::Slight);
            out.push_str(&format!("\n{}, as far as it differs\n{table}\n", comparison::heading(part)));
            out.push_str(&comparison::courses(&exchanged.comparison.columns, part, width));
        }
    }
    if exchanged.times.is_empty() {
        out.push_str("\nNo time in the method changes.\n");
    }
    list(&mut out, "New times in the method", &exchanged.times.iter().map(time).collect::<Vec<_>>(), width);
    list(&mut out, "What cannot be kept", &exchanged.lost, width);
    list(&mut out, "To mind", &exchanged.minded, width);
    let found: Vec<String> = exchanged.found.iter().map(|found| format!("{} ({})", found.message, found.code)).collect();
    out.push_str(&wrap(&format!("\nReckoned by: {}.", exchanged.grounds), width));
    list(&mut out, "Proof-reading would now say", &found, width);
    out
}

fn list(out: &mut String, title: &str, items: &[String], width: usize) {
    if items.is_empty() {
        return;
    }
    out.push_str(&format!("\n{title}\n"));
    for item in items {
        out.push_str(&wrap(&format!("- {item}"), width));
    }
}

fn lines(changed: &[ChangedLine], width: usize) -> String {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width.min(u16::MAX.into()) as u16);
    table.set_header(["stage", "", "before", "% of its flour", "after", "% of its flour"]);
    for line in changed {
        let (before, after) = (figures(line.before), figures(line.after));
        table.add_row([line.stage.clone(), line.title.clone(), before.0, before.1, after.0, after.1]);
    }
    for column in 2..6 {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table.trim_fmt()
}

pub(super) fn figures(figure: Option<(Mass, Option<Fraction>)>) -> (String, String) {
    let Some((mass, share)) = figure else { return ("–".to_owned(), String::new()) };
    (weight(mass), share.map(print::bakers_percent).unwrap_or_default())
}

/// A weight to a tenth of a gram where a change of whole grams would hide it.
fn weight(mass: Mass) -> String {
    if mass < Mass::grams(10.0) { print::mass(mass) } else { format!("{}\u{a0}g", print::number(mass.as_grams(), 1)) }
}

/// A step's time before and after.
fn time(new: &NewTime) -> String {
    let before = new.before.map_or_else(|| "no time".to_owned(), print::time);
    format!("{}, {}: {} instead of {before}", new.stage, new.action.word(), print::time(new.after))
}
