//! A formula sheet for professionals: the whole beside its parts, and the process a line a step.

use super::time;
use crate::sheet::words::{head, remedy_in_words, silenced_in_words};
use crate::sheet::{ComponentSheet, Sheet, StageSheet};
use crate::tongue::Tongue;
use crate::words::{Units, bare_grams, bare_percent, until};
use formula::{Formula, Step};
use quantity::{Mass, print};
use serde_json::{Value, json};

/// The words of a formula's sheet.
#[must_use]
pub fn sheet(sheet: &Sheet, formula: &Formula, language: &str, units: Units) -> Value {
    let many = sheet.components.len() > 1;
    let components = sheet.components.iter().zip(&formula.components).map(|(one, component)| {
        let process = component.stages.iter().map(|stage| {
            let steps: Vec<[String; 4]> = stage.steps.iter().map(|step| line(step, units)).collect();
            json!({ "title": stage.title, "steps": steps })
        });
        json!({
            "title": many.then_some(&one.title),
            "head": head(one),
            "overall": overall(one),
            "stages": one.stages.iter().filter(|stage| !stage.lines.is_empty()).map(stage).collect::<Vec<_>>(),
            "process": process.collect::<Vec<_>>(),
        })
    });
    json!({
        "language": language,
        "title": sheet.title,
        "kitchen": sheet.kitchen,
        "components": components.collect::<Vec<_>>(),
        "silenced": sheet.silenced.iter().map(silenced_in_words).collect::<Vec<_>>(),
    })
}

/// The overall formula: a row a thing, a column a stage in which something is weighed.
fn overall(one: &ComponentSheet) -> Value {
    let has_flour = one.figures.is_some();
    let shown = one.overall.beside(one.stages.len());
    let mut columns = vec!["Ingredient".to_owned()];
    if has_flour {
        columns.push("% of flour".to_owned());
    }
    columns.push("total, g".to_owned());
    columns.extend(shown.iter().map(|s| format!("{}, g", one.stages[*s].title)));
    let row = |title: &str, percent: Option<String>, total: Mass, stages: &dyn Fn(usize) -> Mass| {
        let mut cells = vec![title.to_owned()];
        if has_flour {
            cells.push(percent.unwrap_or_default());
        }
        cells.push(bare_grams(total));
        cells.extend(shown.iter().map(|s| bare_grams(stages(*s))));
        cells
    };
    let rows = one.overall.rows.iter().map(|of| row(of.kind.title(), of.percent.map(bare_percent), of.mass, &|s| of.by_stage[s]));
    let sum = one.overall.percent();
    json!({
        "columns": columns,
        "rows": rows.collect::<Vec<_>>(),
        "total": row("Total", Some(print::number(sum.as_percent(), 1)), one.overall.total, &|s| one.overall.of_stage(s)),
    })
}

fn stage(stage: &StageSheet) -> Value {
    let has_flour = stage.lines.iter().any(|line| line.percent.is_some());
    let rows = stage.lines.iter().map(|line| {
        let mut cells = vec![line.title.clone()];
        if has_flour {
            cells.push(line.percent.map(bare_percent).unwrap_or_default());
        }
        cells.push(bare_grams(line.mass));
        cells.push(line.weighable.as_ref().map(|one| print::mass(one.shown)).unwrap_or_default());
        cells.push(line.note.clone().unwrap_or_default());
        cells
    });
    let percent: &[&str] = if has_flour { &["% of its flour"] } else { &[] };
    let columns = [&["Ingredient"], percent, &["g", "scale shows", "note"]].concat();
    json!({
        "title": format!("{} ({})", stage.title, stage.kind.word()),
        "columns": columns,
        "rows": rows.collect::<Vec<_>>(),
        "remarks": stage.lines.iter().filter_map(remedy_in_words).collect::<Vec<_>>(),
    })
}

/// What is done, how long, how warm, and until when.
fn line(step: &Step, units: Units) -> [String; 4] {
    [
        step.action.word().to_owned(),
        time(step, Tongue::default()).unwrap_or_default(),
        step.temperature.map(|range| units.temperature(range)).unwrap_or_default(),
        step.until.as_ref().map(|condition| until(condition, units)).unwrap_or_default(),
    ]
}
