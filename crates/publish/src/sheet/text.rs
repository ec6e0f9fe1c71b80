//! The sheet for the terminal: aligned columns that wrap to the width.

use super::words::{head, remedy_in_words, silenced_in_words};
use super::{ComponentSheet, Sheet, StageSheet};
use crate::words::{bare_grams, bare_percent, wrap};
use comfy_table::{CellAlignment, ContentArrangement, LineStyle, Table, TableStyle, presets};
use quantity::print;

/// The sheet as text of that width.
#[must_use]
pub fn text(sheet: &Sheet, width: usize) -> String {
    let mut out = format!("{}\n{}\n", sheet.title, "═".repeat(sheet.title.chars().count()));
    for component in &sheet.components {
        out.push_str(&component_text(component, sheet.components.len(), width));
    }
    out.push_str(&format!("\nWeighed for {}.\n", sheet.kitchen));
    for silenced in &sheet.silenced {
        out.push_str(&wrap(&silenced_in_words(silenced), width));
    }
    out
}

fn component_text(component: &ComponentSheet, components: usize, width: usize) -> String {
    let mut out = String::new();
    if components > 1 {
        out.push_str(&format!("\n{}\n{}\n", component.title, "─".repeat(component.title.chars().count())));
    }
    for line in head(component) {
        out.push_str(&wrap(&line, width));
    }
    if component.stages.len() > 1 || component.figures.is_some() {
        out.push_str(&format!("\nOverall formula\n{}\n", overall_table(component, width).trim_fmt()));
    }
    for stage in component.stages.iter().filter(|stage| !stage.lines.is_empty()) {
        out.push_str(&format!("\n{} ({})\n{}\n", stage.title, stage.kind.word(), stage_table(stage, width).trim_fmt()));
        for line in &stage.lines {
            if let Some(words) = remedy_in_words(line) {
                out.push_str(&wrap(&words, width));
            }
        }
    }
    if !component.shifts.is_empty() {
        let shifts: Vec<String> = component
            .shifts
            .iter()
            .map(|shift| {
                format!(
                    "{} {} instead of {}",
                    shift.ingredient,
                    print::percent(shift.weighed, 2),
                    print::percent(shift.wanted, 2)
                )
            })
            .collect();
        out.push_str(&wrap(&format!("As the scales show it: {}.", shifts.join("; ")), width));
    }
    out
}

/// A rule under the heading, and nothing else that the eye must pass.
pub const RULED: TableStyle = presets::NOTHING.header_separator(LineStyle::new('─', '─', '─', '─'));

/// An empty table with that rule, as wide as the terminal at the most.
#[must_use]
pub fn ruled(width: usize) -> Table {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width.min(u16::MAX.into()) as u16);
    table
}

/// Sets columns of figures to the right.
pub fn right_align(table: &mut Table, columns: std::ops::Range<usize>) {
    for column in columns {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
}

fn overall_table(component: &ComponentSheet, width: usize) -> Table {
    let mut table = ruled(width);
    let many = component.stages.len() > 1;
    let has_flour = component.figures.is_some();
    let mut heading = vec!["".to_owned()];
    if has_flour {
        heading.push("% of flour".to_owned());
    }
    heading.push("total g".to_owned());
    if many {
        heading.extend(component.stages.iter().map(|stage| format!("{} g", stage.title)));
    }
    let columns = heading.len();
    table.set_header(heading);
    for row in &component.overall.rows {
        let mut cells = vec![row.kind.title().to_owned()];
        if has_flour {
            cells.push(row.percent.map(bare_percent).unwrap_or_default());
        }
        cells.push(bare_grams(row.mass));
        if many {
            cells.extend(row.by_stage.iter().map(|mass| bare_grams(*mass)));
        }
        table.add_row(cells);
    }
    table.add_row(total_row(component, has_flour));
    right_align(&mut table, 1..columns);
    table
}

fn total_row(component: &ComponentSheet, has_flour: bool) -> Vec<String> {
    let mut total = vec!["total".to_owned()];
    if has_flour {
        total.push(print::number(component.overall.percent().as_percent(), 1));
    }
    total.push(bare_grams(component.overall.total));
    total
}

fn stage_table(stage: &StageSheet, width: usize) -> Table {
    let mut table = ruled(width);
    let has_flour = stage.lines.iter().any(|line| line.percent.is_some());
    let mut heading = vec![""];
    if has_flour {
        heading.push("% of its flour");
    }
    heading.extend(["g", "scale shows", "uncertainty", "note"]);
    let numbers = heading.len() - 1;
    table.set_header(heading);
    for line in &stage.lines {
        let mut cells = vec![line.title.clone()];
        if has_flour {
            cells.push(line.percent.map(bare_percent).unwrap_or_default());
        }
        cells.push(bare_grams(line.mass));
        cells.push(line.weighable.as_ref().map(|one| print::mass(one.shown)).unwrap_or_default());
        cells.push(line.weighable.as_ref().map(|one| format!("±{}", print::percent(one.uncertainty, 1))).unwrap_or_default());
        cells.push(line.note.clone().unwrap_or_default());
        table.add_row(cells);
    }
    right_align(&mut table, 1..numbers);
    table
}
