//! The sheet for other programs. Masses in gram, shares in percent, unrounded.

use super::{ComponentSheet, LineSheet, Sheet};
use formula::arithmetic::{Counted, Figures};
use quantity::Fraction;
use serde_json::{Value, json};

/// The sheet as JSON.
#[must_use]
pub fn json(sheet: &Sheet) -> Value {
    json!({
        "formula": sheet.name,
        "title": sheet.title,
        "kitchen": sheet.kitchen,
        "silenced": sheet.silenced.iter().map(|one| json!({ "rule": one.found.code, "because": one.reason })).collect::<Vec<_>>(),
        "components": sheet.components.iter().map(component).collect::<Vec<_>>(),
    })
}

fn component(component: &ComponentSheet) -> Value {
    let yields = &component.yields;
    let overall: Vec<Value> = component
        .overall
        .rows
        .iter()
        .map(|row| {
            json!({
                "ingredient": row.kind.title(),
                "percent": row.percent.map(Fraction::as_percent),
                "grams": row.mass.as_grams(),
                "grams-by-stage": row.by_stage.iter().map(|mass| mass.as_grams()).collect::<Vec<_>>(),
            })
        })
        .collect();
    let stages: Vec<Value> = component
        .stages
        .iter()
        .map(|stage| {
            json!({
                "title": stage.title,
                "kind": stage.kind.word(),
                "mixed-grams": stage.mixed.as_grams(),
                "made-grams": stage.made.as_grams(),
                "lines": stage.lines.iter().map(line).collect::<Vec<_>>(),
            })
        })
        .collect();
    json!({
        "title": component.title,
        "yield": {
            "pieces": yields.pieces.map(|pieces| pieces.as_pieces()),
            "scaling-weight-grams": yields.scaling_weight.map(|mass| mass.as_grams()),
            "raw-grams": yields.raw().as_grams(),
            "done-grams": yields.done().as_grams(),
        },
        "total-flour-grams": component.overall.total_flour.as_grams(),
        "prefermented-percent": component.overall.prefermented.as_percent(),
        "figures": component.figures.as_ref().map(figures),
        "overall": overall,
        "stages": stages,
    })
}

fn figures(figures: &Figures) -> Value {
    json!({
        "nominal-hydration-percent": figures.nominal_hydration.as_percent(),
        "true-hydration": counted(&figures.true_hydration),
        "salt-percent": figures.salt.as_percent(),
        "sugars": counted(&figures.sugars),
        "fat": counted(&figures.fat),
        "egg-percent": figures.egg.as_percent(),
        "milk-solids": counted(&figures.milk_solids),
        "flour-protein": counted(&figures.flour_protein),
        "instant-yeast": figures.leaven.map(|(usual, spread)| json!({
            "percent": usual.as_percent(), "from-percent": spread.from.as_percent(), "to-percent": spread.to.as_percent(),
        })),
    })
}

fn counted(figure: &Counted) -> Value {
    let missing: Vec<&str> = figure.missing.iter().map(|missing| missing.ingredient.as_str()).collect();
    json!({ "percent": figure.value.as_percent(), "not-known-for": missing })
}

fn line(line: &LineSheet) -> Value {
    json!({
        "ingredient": line.title,
        "note": line.note,
        "percent": line.percent.map(Fraction::as_percent),
        "grams": line.mass.as_grams(),
        "scale-shows-grams": line.weighable.as_ref().map(|one| one.shown.as_grams()),
        "relative-uncertainty-percent": line.weighable.as_ref().map(|one| one.uncertainty.as_percent()),
    })
}
