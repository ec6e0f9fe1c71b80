//! A recipe card: what is needed, what is done, what to mind.

use super::time;
use crate::method::sentence;
use crate::needs::{Need, heading, needs};
use crate::page::contained;
use crate::tongue::Tongue;
use crate::words::{Units, hours_told, makes, until};
use bench::cautions::cautions;
use formula::read::BookSettings;
use formula::resolve::formula::{StageAt, Word};
use formula::{Formula, Step};
use plan::hours;
use serde_json::{Value, json};

/// The words of a recipe card.
#[must_use]
pub fn card(formula: &Formula, settings: &BookSettings) -> Value {
    let settings = &settings.told_for(&formula.head);
    let units = Units::for_readers(settings);
    let tongue = units.tongue;
    let components = formula.components.iter().enumerate().map(|(c, component)| {
        let stages = component.stages.iter().enumerate().map(|(s, stage)| {
            let steps: Vec<Value> = stage.steps.iter().map(|step| told(formula, (c, s), step, units)).collect();
            json!({ "title": stage.title, "steps": steps })
        });
        json!({
            "title": heading(formula, component),
            "needs": needs(formula, c, units, settings.eggs).iter().map(|one| need(one, tongue)).collect::<Vec<_>>(),
            "stages": stages.collect::<Vec<_>>(),
        })
    });
    let minded = cautions(formula).into_iter().map(|one| {
        let (title, text) = tongue.caution(&one);
        json!({ "title": title, "text": text })
    });
    json!({
        "language": settings.language,
        "title": formula.head.title,
        "book": settings.title,
        "author": settings.author,
        "facts": facts(formula, tongue),
        "components": components.collect::<Vec<_>>(),
        "contains": contained(formula, tongue).join(", "),
        "cautions": minded.collect::<Vec<_>>(),
        "storage": formula.head.storage,
        "words": {
            "method": tongue.method(),
            "contains": tongue.contains(),
            "check": tongue.check_labels(),
            "keeping": tongue.keeping(),
            "guidance": tongue.guidance_only(),
        },
    })
}

fn facts(formula: &Formula, tongue: Tongue) -> Vec<[String; 2]> {
    let print = tongue.print;
    let mut facts = Vec::new();
    let mut fact = |label: &str, text: String| facts.push([label.to_owned(), text]);
    if let Some(main) = formula.components.first() {
        fact(tongue.makes(), makes(main, tongue));
        if let Some(weight) = main.yields.scaling_weight.filter(|_| main.yields.pieces.is_some()) {
            fact(tongue.each(), format!("{} {}", print.mass(weight), tongue.raw()));
        }
        if let Some(serves) = main.yields.serves {
            fact(tongue.serves(), print.count(serves));
        }
    }
    for (label, _, span) in hours_told(&hours(formula), tongue) {
        fact(label, print.time(span));
    }
    facts
}

fn need(need: &Need, tongue: Tongue) -> Value {
    let household = need.household.as_ref().map(|household| format!(" ({household})")).unwrap_or_default();
    let note = need.note.as_ref().map(|note| format!(", {note}")).unwrap_or_default();
    json!({ "amount": tongue.print.mass(need.mass), "title": need.title, "more": format!("{household}{note}") })
}

/// A step's sentence, and the figures that it does not tell itself.
fn told(formula: &Formula, at: StageAt, step: &Step, units: Units) -> Value {
    let text = sentence(formula, at, step, units);
    let condition = step.until.as_ref().filter(|_| !step.words.contains(&Word::Until)).map(|one| until(one, units));
    let figures = [time(step, units.tongue), step.temperature.map(|range| units.temperature(range)), condition];
    let untold: Vec<String> = figures.into_iter().flatten().filter(|figure| !text.contains(figure.as_str())).collect();
    json!({ "text": text, "glance": untold.join(" · ") })
}
