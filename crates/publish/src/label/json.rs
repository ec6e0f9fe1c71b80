//! A draft of a label for other programs: figures unrounded beside what is printed.

use super::words;
use crate::tongue::Tongue;
use bench::label::{Entry, Label, Law, Shown};
use quantity::{Fraction, Mass};
use serde_json::{Value, json};

/// A label as JSON: weights in gram, shares in percent.
#[must_use]
pub fn json(label: &Label) -> Value {
    json!({
        "draft": words::DRAFT,
        "for": match label.law { Law::Eu => "eu", Law::Uk => "uk", Law::Us => "us" },
        "name": label.name,
        "components": label.components,
        "batch-gram": label.makes.as_grams(),
        "ingredients": label.list.entries.iter().map(|one| entry(one, words::tongue(label))).collect::<Vec<_>>(),
        "water": label.list.water.map(|water| json!({
            "put-in-gram": water.put_in.as_grams(),
            "counted-gram": water.counted.as_grams(),
            "percent-of-finished": water.share.as_percent(),
            "listed": water.is_listed,
        })),
        "ingredients-text": words::ingredients(label).iter().map(|run| run.words.as_str()).collect::<String>(),
        "allergens": label.allergens.iter().map(|one| one.title.as_str()).collect::<Vec<_>>(),
        "quantities": label.quantities.iter()
            .map(|one| json!({ "of": one.title, "percent": one.share.as_percent(), "printed": words::stated(one.share, words::tongue(label)) }))
            .collect::<Vec<_>>(),
        "net-gram": label.pack.net.as_grams(),
        "net-text": words::net(label),
        "figures-at-least-mm": label.law.is_european().then_some(label.pack.figures_high),
        "nutrition-declaration": label.declaration.as_ref().map(|declaration| json!({
            "portion-gram": declaration.portion.map(Mass::as_grams),
            "lines": declaration.lines.iter().map(|line| json!({
                "what": line.title,
                "unit": line.unit,
                "in-100-gram": shown(&line.in_100_g),
                "in-portion": line.in_portion.as_ref().map(shown),
                "percent-of-reference-intake": line.intake.map(Fraction::as_percent),
            })).collect::<Vec<_>>(),
        })),
        "nutrition-facts": label.facts.as_ref().map(|facts| json!({
            "serving-gram": facts.serving.weighs.as_grams(),
            "serving-size": format!("{} ({}g)", facts.serving.measure, facts.serving.gram),
            "servings": facts.serving.in_pack.0,
            "about": facts.serving.in_pack.1,
            "calories": shown(&facts.calories),
            "lines": facts.lines.iter().map(|line| json!({
                "what": line.title,
                "unit": line.unit,
                "amount": shown(&line.amount),
                "percent-of-daily-value": line.daily.map(|daily| daily.value()),
            })).collect::<Vec<_>>(),
        })),
        "storage": label.storage,
        "keeps-hours": label.keeps.map(|(keeps, ..)| keeps.as_hours()),
        "use-by": label.keeps.map(|(_, _, use_by)| use_by),
        "alcohol": label.alcohol.as_ref().map(|one| json!({ "from": one.from, "gram-in-100-gram-at-most": one.at_most.as_grams() })),
        "sold-by": label.sold_by,
        "missing": label.gaps,
        "to-decide": label.open,
        "small-sellers": label.law.spared(),
        "rules": label.law.rules().iter()
            .map(|rule| json!({ "decides": rule.decides, "name": rule.name, "date": rule.date }))
            .collect::<Vec<_>>(),
    })
}

fn entry(entry: &Entry, tongue: Tongue) -> Value {
    json!({
        "name": entry.runs.iter().map(|run| run.words.as_str()).collect::<String>(),
        "set-off": entry.runs.iter().filter(|run| run.is_strong).map(|run| run.words.as_str()).collect::<Vec<_>>(),
        "gram": entry.mass.as_grams(),
        "percent-of-finished": entry.share.as_percent(),
        "stated": entry.is_stated.then(|| words::stated(entry.share, tongue)),
        "parts": entry.parts.entries.iter().map(|part| self::entry(part, tongue)).collect::<Vec<_>>(),
    })
}

fn shown(shown: &Shown) -> Value {
    match shown {
        Shown::Printed(printed) => json!({ "printed": printed.to_string() }),
        Shown::Nearly { printed, lacks, untold } => {
            json!({ "printed": printed.to_string(), "lacks-at-most": lacks, "untold": untold })
        }
        Shown::Gap { least, most, untold } => json!({ "printed": null, "least": least, "most": most, "untold": untold }),
    }
}
