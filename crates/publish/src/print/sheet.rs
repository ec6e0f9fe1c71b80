//! A formula sheet for professionals: the whole beside its parts, and the process a line a step.

use super::time;
use crate::sheet::words::{goes_on, head, remedy_told, silenced_in_words};
use crate::sheet::{ComponentSheet, Sheet, StageSheet};
use crate::tongue::Tongue;
use crate::words::{Units, bare_grams_in, bare_percent_in, until};
use formula::read::BookSettings;
use formula::{Formula, Step};
use quantity::Mass;
use serde_json::{Value, json};

/// The words of a formula's sheet.
#[must_use]
pub fn sheet(sheet: &Sheet, formula: &Formula, settings: &BookSettings) -> Value {
    let settings = &settings.told_for(&formula.head);
    let (tongue, units) = (sheet.tongue, Units::for_readers(settings));
    let many = sheet.components.len() > 1;
    let components = sheet.components.iter().zip(&formula.components).map(|(one, component)| {
        let process = component.stages.iter().map(|stage| {
            let steps: Vec<[String; 4]> = stage.steps.iter().map(|step| line(step, units)).collect();
            json!({ "title": stage.title, "steps": steps })
        });
        json!({
            "title": many.then_some(&one.title),
            "head": head(one, tongue),
            "overall": overall(one, tongue),
            "stages": one.stages.iter().filter(|stage| !stage.lines.is_empty()).map(|one| stage(one, tongue)).collect::<Vec<_>>(),
            "process": process.collect::<Vec<_>>(),
        })
    });
    json!({
        "language": settings.language,
        "title": sheet.title,
        "foot": tongue.sheet_weighed_for(&sheet.kitchen),
        "components": components.collect::<Vec<_>>(),
        "silenced": sheet.silenced.iter().map(|one| silenced_in_words(one, tongue)).collect::<Vec<_>>(),
        "words": {
            "overall": tongue.sheet_overall(),
            "process": tongue.sheet_process(),
            "columns": [tongue.sheet_stage(), tongue.sheet_do(), tongue.sheet_time(), tongue.sheet_at(), tongue.sheet_until()],
        },
    })
}

/// The overall formula: a row a thing, a column a stage in which something is weighed.
fn overall(one: &ComponentSheet, tongue: Tongue) -> Value {
    let has_flour = one.figures.is_some();
    let shown = one.overall.beside(one.stages.len());
    let mut columns = vec![tongue.ingredient().to_owned()];
    if has_flour {
        columns.push(tongue.percent_of_flour().to_owned());
    }
    columns.push(tongue.total_grams().to_owned());
    columns.extend(shown.iter().map(|s| format!("{}, g", one.stages[*s].title)));
    let grams = |mass: Mass| bare_grams_in(mass, tongue);
    let row = |title: &str, percent: Option<String>, total: Mass, stages: &dyn Fn(usize) -> Mass| {
        let mut cells = vec![title.to_owned()];
        if has_flour {
            cells.push(percent.unwrap_or_default());
        }
        cells.push(grams(total));
        cells.extend(shown.iter().map(|s| grams(stages(*s))));
        cells
    };
    let percent = |share| bare_percent_in(share, tongue);
    let rows = one.overall.rows.iter().map(|of| row(of.kind.title(), of.percent.map(percent), of.mass, &|s| of.by_stage[s]));
    let sum = tongue.print.number(one.overall.percent().as_percent(), 1);
    json!({
        "columns": columns,
        "rows": rows.collect::<Vec<_>>(),
        "total": row(tongue.total(), Some(sum), one.overall.total, &|s| one.overall.of_stage(s)),
    })
}

fn stage(stage: &StageSheet, tongue: Tongue) -> Value {
    let has_flour = stage.lines.iter().any(|line| line.percent.is_some());
    let rows = stage.lines.iter().map(|line| {
        let mut cells = vec![line.title.clone()];
        if has_flour {
            cells.push(line.percent.map(|share| bare_percent_in(share, tongue)).unwrap_or_default());
        }
        cells.push(bare_grams_in(line.mass, tongue));
        cells.push(line.weighable.as_ref().map(|one| tongue.print.mass(one.shown)).unwrap_or_default());
        cells.push(line.note.clone().unwrap_or_default());
        cells
    });
    let percent: &[&str] = if has_flour { &[tongue.percent_of_its_flour()] } else { &[] };
    let columns = [&[tongue.ingredient()], percent, &["g", tongue.sheet_scale_shows(), tongue.sheet_note()]].concat();
    let remedies = stage.lines.iter().filter_map(|line| remedy_told(line, tongue));
    json!({
        "title": format!("{} ({})", stage.title, tongue.kind(stage.kind)),
        "columns": columns,
        "rows": rows.collect::<Vec<_>>(),
        "remarks": goes_on(stage, tongue).into_iter().chain(remedies).collect::<Vec<_>>(),
    })
}

/// What is done, how long, how warm, and until when.
fn line(step: &Step, units: Units) -> [String; 4] {
    [
        units.tongue.action(step.action).to_owned(),
        time(step, units.tongue).unwrap_or_default(),
        step.temperature.map(|range| units.temperature(range)).unwrap_or_default(),
        step.until.as_ref().map(|condition| until(condition, units)).unwrap_or_default(),
    ]
}
