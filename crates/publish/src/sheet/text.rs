//! The sheet for the terminal: aligned columns that wrap to the width.

use super::words::{goes_on, head, remedy_told, silenced_in_words};
use super::{ComponentSheet, Sheet, StageSheet};
use crate::tongue::Tongue;
use crate::words::{bare_grams_in, bare_percent_in, wrap};
use comfy_table::{CellAlignment, ContentArrangement, LineStyle, Table, TableStyle, presets};
use quantity::print::capital;

/// The sheet as text of that width.
#[must_use]
pub fn text(sheet: &Sheet, width: usize) -> String {
    let mut out = format!("{}\n{}\n", sheet.title, "═".repeat(sheet.title.chars().count()));
    for component in &sheet.components {
        out.push_str(&component_text(component, sheet.components.len(), width, sheet.tongue));
    }
    out.push_str(&format!("\n{}.\n", capital(&sheet.tongue.sheet_weighed_for(&sheet.kitchen))));
    for silenced in &sheet.silenced {
        out.push_str(&wrap(&silenced_in_words(silenced, sheet.tongue), width));
    }
    out
}

fn component_text(component: &ComponentSheet, components: usize, width: usize, tongue: Tongue) -> String {
    let mut out = String::new();
    if components > 1 {
        out.push_str(&format!("\n{}\n{}\n", component.title, "─".repeat(component.title.chars().count())));
    }
    for line in head(component, tongue) {
        out.push_str(&wrap(&line, width));
    }
    if component.stages.len() > 1 || component.figures.is_some() {
        out.push_str(&format!("\n{}\n{}\n", tongue.sheet_overall(), overall_table(component, width, tongue).trim_fmt()));
    }
    for stage in component.stages.iter().filter(|stage| !stage.lines.is_empty()) {
        out.push_str(&stage_text(stage, width, tongue));
    }
    if !component.shifts.is_empty() {
        let percent = |share| tongue.print.percent(share, 2);
        let shifts = component.shifts.iter();
        let shifts: Vec<String> =
            shifts.map(|shift| tongue.sheet_shift(&shift.ingredient, percent(shift.weighed), percent(shift.wanted))).collect();
        out.push_str(&wrap(&tongue.sheet_as_weighed(shifts.join("; ")), width));
    }
    out
}

fn stage_text(stage: &StageSheet, width: usize, tongue: Tongue) -> String {
    let table = stage_table(stage, width, tongue);
    let mut out = format!("\n{} ({})\n{}\n", stage.title, tongue.kind(stage.kind), table.trim_fmt());
    let remedies = stage.lines.iter().filter_map(|line| remedy_told(line, tongue));
    for words in goes_on(stage, tongue).into_iter().chain(remedies) {
        out.push_str(&wrap(&words, width));
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

fn overall_table(component: &ComponentSheet, width: usize, tongue: Tongue) -> Table {
    let mut table = ruled(width);
    // Only stages in which something is weighed have a column.
    let shown = component.overall.beside(component.stages.len());
    let has_flour = component.figures.is_some();
    let mut heading = vec![String::new()];
    if has_flour {
        heading.push(tongue.percent_of_flour().to_owned());
    }
    heading.push(tongue.total_grams().to_owned());
    heading.extend(shown.iter().map(|s| format!("{}, g", component.stages[*s].title)));
    let columns = heading.len();
    table.set_header(heading);
    for row in &component.overall.rows {
        let mut cells = vec![row.kind.title().to_owned()];
        if has_flour {
            cells.push(row.percent.map(|share| bare_percent_in(share, tongue)).unwrap_or_default());
        }
        cells.push(bare_grams_in(row.mass, tongue));
        cells.extend(shown.iter().map(|s| bare_grams_in(row.by_stage[*s], tongue)));
        table.add_row(cells);
    }
    table.add_row(total_row(component, &shown, has_flour, tongue));
    right_align(&mut table, 1..columns);
    table
}

fn total_row(component: &ComponentSheet, shown: &[usize], has_flour: bool, tongue: Tongue) -> Vec<String> {
    let mut total = vec![tongue.total().to_owned()];
    if has_flour {
        total.push(tongue.print.number(component.overall.percent().as_percent(), 1));
    }
    total.push(bare_grams_in(component.overall.total, tongue));
    total.extend(shown.iter().map(|s| bare_grams_in(component.overall.of_stage(*s), tongue)));
    total
}

fn stage_table(stage: &StageSheet, width: usize, tongue: Tongue) -> Table {
    let mut table = ruled(width);
    let has_flour = stage.lines.iter().any(|line| line.percent.is_some());
    let mut heading = vec![""];
    if has_flour {
        heading.push(tongue.percent_of_its_flour());
    }
    heading.extend(["g", tongue.sheet_scale_shows(), tongue.sheet_uncertainty(), tongue.sheet_note()]);
    let numbers = heading.len() - 1;
    table.set_header(heading);
    for line in &stage.lines {
        let mut cells = vec![line.title.clone()];
        if has_flour {
            cells.push(line.percent.map(|share| bare_percent_in(share, tongue)).unwrap_or_default());
        }
        cells.push(bare_grams_in(line.mass, tongue));
        cells.push(line.weighable.as_ref().map(|one| tongue.print.mass(one.shown)).unwrap_or_default());
        cells.push(
            line.weighable.as_ref().map(|one| format!("±{}", tongue.print.percent(one.uncertainty, 1))).unwrap_or_default(),
        );
        cells.push(line.note.clone().unwrap_or_default());
        table.add_row(cells);
    }
    right_align(&mut table, 1..numbers);
    table
}
