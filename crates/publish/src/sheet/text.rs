//! The sheet for the terminal: aligned columns that wrap to the width.

use super::{ComponentSheet, LineSheet, Sheet, StageSheet};
use bench::rules::Silenced;
use bench::weighing::Remedy;
use comfy_table::{CellAlignment, ContentArrangement, LineStyle, Table, TableStyle, presets};
use formula::arithmetic::Figures;
use formula::arithmetic::figures::Known;
use quantity::{Fraction, Mass, print};

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

/// The figures above the tables, a line each.
pub fn head(component: &ComponentSheet) -> Vec<String> {
    let yields = &component.yields;
    let mut lines = Vec::new();
    let pieces = match (yields.pieces, yields.scaling_weight) {
        (Some(pieces), Some(weight)) => format!("{} {} of {}", print::count(pieces), yields.word(pieces), print::mass(weight)),
        _ => print::large_mass(yields.done()),
    };
    let mut makes = format!("Makes {pieces}");
    if yields.make_up_loss > Fraction::ZERO || yields.bake_loss > Fraction::ZERO {
        makes.push_str(&format!(
            ": {} mixed, {} raw after {} make-up loss, {} done after {} bake loss",
            print::large_mass(yields.made),
            print::large_mass(yields.raw()),
            print::percent(yields.make_up_loss, 1),
            print::large_mass(yields.done()),
            print::percent(yields.bake_loss, 1),
        ));
    }
    lines.push(makes);
    if let Some(figures) = &component.figures {
        lines.extend(figures_in_words(figures, component.overall.total_flour, component.overall.prefermented));
    }
    lines
}

fn figures_in_words(figures: &Figures, flour: Mass, prefermented: Fraction) -> Vec<String> {
    let percent = |share: Fraction| print::percent(share, 1);
    let mut lines = vec![
        format!(
            "Total flour {}, of which prefermented {}; flour protein {}",
            print::large_mass(flour),
            percent(prefermented),
            known(&figures.flour_protein)
        ),
        format!(
            "Hydration: nominal {} (water alone), true {} (the water of milk, egg, butter and all else counted)",
            percent(figures.nominal_hydration),
            known(&figures.true_hydration)
        ),
        format!(
            "Salt {}, sugars {}, fat {}, egg {}, milk solids {}",
            print::percent(figures.salt, 2),
            known(&figures.sugars),
            known(&figures.fat),
            percent(figures.egg),
            known(&figures.milk_solids)
        ),
    ];
    if let Some((usual, spread)) = &figures.leaven {
        let range = if spread.is_single() {
            String::new()
        } else {
            format!(" ({} to {} as sources differ)", print::percent(spread.from, 2), print::percent(spread.to, 2))
        };
        lines.push(format!("Yeast, as instant dry yeast: {}{range}", print::percent(*usual, 2)));
    }
    lines
}

/// A figure, or "at least" where an ingredient's part of it is not known.
pub fn known(figure: &Known) -> String {
    let value = print::percent(figure.value, 1);
    if figure.missing.is_empty() {
        return value;
    }
    let names: Vec<&str> = figure.missing.iter().map(|missing| missing.ingredient.as_str()).collect();
    format!("at least {value} (not counted: {})", names.join(", "))
}

/// A rule under the heading, and nothing else that the eye must pass.
pub const RULED: TableStyle = presets::NOTHING.header_separator(LineStyle::new('─', '─', '─', '─'));

fn table(width: usize) -> Table {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width.min(u16::MAX.into()) as u16);
    table
}

fn right_align(table: &mut Table, columns: std::ops::Range<usize>) {
    for column in columns {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
}

/// A number for a column of gram: the unit stands in the heading.
fn grams(mass: Mass) -> String {
    if mass == Mass::ZERO { String::new() } else { print::mass(mass).trim_end_matches('g').trim_end_matches('\u{a0}').to_owned() }
}

fn overall_table(component: &ComponentSheet, width: usize) -> Table {
    let mut table = table(width);
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
            cells.push(
                row.percent.map(|p| print::bakers_percent(p).trim_end_matches(['%', '\u{a0}']).to_owned()).unwrap_or_default(),
            );
        }
        cells.push(grams(row.mass));
        if many {
            cells.extend(row.by_stage.iter().map(|mass| grams(*mass)));
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
        let sum: Fraction = component.overall.rows.iter().filter_map(|row| row.percent).sum();
        total.push(print::number(sum.as_percent(), 1));
    }
    total.push(grams(component.overall.total));
    total
}

fn stage_table(stage: &StageSheet, width: usize) -> Table {
    let mut table = table(width);
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
            cells.push(
                line.percent.map(|p| print::bakers_percent(p).trim_end_matches(['%', '\u{a0}']).to_owned()).unwrap_or_default(),
            );
        }
        cells.push(grams(line.mass));
        cells.push(line.weighable.as_ref().map(|one| print::mass(one.shown)).unwrap_or_default());
        cells.push(line.weighable.as_ref().map(|one| format!("±{}", print::percent(one.uncertainty, 1))).unwrap_or_default());
        cells.push(line.note.clone().unwrap_or_default());
        table.add_row(cells);
    }
    right_align(&mut table, 1..numbers);
    table
}

/// A rule that the author silenced, with the reason.
pub fn silenced_in_words(silenced: &Silenced) -> String {
    format!("Silenced by its author, {}: {} ({}).", silenced.found.code, silenced.found.message, silenced.reason)
}

/// What to do with an amount that no scale of the kitchen shows well.
pub fn remedy_in_words(line: &LineSheet) -> Option<String> {
    let weighable = line.weighable.as_ref()?;
    let Remedy { solution, smallest_batch } = weighable.remedy.as_ref()?;
    let mut words = format!(
        "{}: {} is little for a scale in steps of {} (±{} standard uncertainty).",
        line.title,
        print::mass(line.mass),
        print::mass(weighable.scale.shows),
        print::percent(weighable.uncertainty, 1),
    );
    if let Some(solution) = solution {
        words.push_str(&format!(
            " Stir {} into {} of the water and use {} of that, the water being taken off; or make {} times the batch.",
            print::mass(solution.weigh),
            print::mass(solution.water),
            print::mass(solution.take),
            print::number(rounded_up(*smallest_batch), 1),
        ));
    } else {
        words.push_str(&format!(" It weighs well from {} times the batch on.", print::number(rounded_up(*smallest_batch), 1)));
    }
    if let Some(spoonful) = &weighable.spoonful {
        words.push_str(&format!(
            " By the spoon: {} ({} off, spoons differ by ±{}).",
            spoonful.measure,
            print::percent(spoonful.off, 0),
            print::percent(spoonful.spread, 0)
        ));
    }
    Some(words)
}

/// A number of batches to the next tenth, or to the next whole from ten on: never less than is needed.
fn rounded_up(batches: f64) -> f64 {
    let steps = if batches < 10.0 { 10.0 } else { 1.0 };
    (batches * steps - 1e-9).ceil() / steps
}

/// Breaks a line at the width, further lines indented.
pub fn wrap(line: &str, width: usize) -> String {
    let (mut out, mut column) = (String::new(), 0);
    for word in line.split(' ') {
        let length = word.chars().count();
        if column > 0 && column + 1 + length > width {
            out.push_str("\n  ");
            column = 2;
        } else if column > 0 {
            out.push(' ');
            column += 1;
        }
        out.push_str(word);
        column += length;
    }
    out.push('\n');
    out
}
