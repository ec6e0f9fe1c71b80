//! Labels: what stands on each, and how small its letters may be.

use crate::label::words;
use crate::tongue::Tongue;
use bench::label::{Declaration, FactLine, Facts, Label, Law};
use formula::read::BookSettings;
use serde_json::{Value, json};

/// How labels are meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meant {
    /// As drafts, which each of them says.
    pub as_drafts: bool,
    /// For packs whose largest face is under 80 cm².
    pub for_small_packs: bool,
}

/// The words of labels of one law.
#[must_use]
pub fn labels(labels: &[Label], settings: &BookSettings, meant: Meant) -> Value {
    let law = labels.first().map_or(Law::Eu, |one| one.law);
    let tongue = labels.first().map(words::tongue).unwrap_or_default();
    // A label speaks the language of its law, or of the formula that it is of.
    let language = match labels.first() {
        Some(one) if one.is_german && !settings.is_german() => "de",
        _ if law.is_european() => &settings.language,
        _ => "en-US",
    };
    let title = match labels {
        [one] => tongue.labels_of(&one.name),
        _ => tongue.labels_of(&settings.title),
    };
    json!({
        "language": language,
        "title": title,
        "least": least(law, meant),
        "labels": labels.iter().map(|one| label(one, meant)).collect::<Vec<_>>(),
    })
}

/// The smallest letters: of European law by the x (Regulation (EU) No 1169/2011, Art. 13 and Annex IV), of American law
/// by the o, 1/16 inch (21 CFR 101.2(c), from memory).
fn least(law: Law, meant: Meant) -> Value {
    match law {
        Law::Eu | Law::Uk => json!({ "by": "x", "high": if meant.for_small_packs { 0.9 } else { 1.2 } }),
        Law::Us => json!({ "by": "o", "high": 25.4 / 16.0 }),
    }
}

fn label(label: &Label, meant: Meant) -> Value {
    let runs: Vec<Value> =
        words::ingredients(label).iter().map(|run| json!({ "words": run.words, "strong": run.is_strong })).collect();
    let lines: Vec<String> = words::contains(label).into_iter().chain(words::sums(label)).collect();
    let after: Vec<String> = words::date(label).into_iter().chain(label.storage.clone()).chain(label.sold_by.clone()).collect();
    json!({
        "name": label.name,
        "runs": runs,
        "lines": lines,
        "net": { "words": words::net(label), "high": label.pack.figures_high },
        "after": after,
        "declaration": label.declaration.as_ref().map(|one| declared(one, words::tongue(label))),
        "facts": label.facts.as_ref().map(stated),
        "draft": meant.as_drafts.then(|| words::tongue(label).label_check()),
    })
}

fn declared(declaration: &Declaration, tongue: Tongue) -> Value {
    let mut head = vec![tongue.label_nutrition().to_owned(), tongue.label_per_100_g().to_owned()];
    if let Some(portion) = declaration.portion {
        head.extend([
            tongue.label_per_portion(tongue.print.large_mass(words::whole(portion))),
            tongue.label_of_intake().replace(' ', "\u{a0}"),
        ]);
    }
    let rows = declaration.lines.iter().map(|line| {
        let title = if line.unit == "kcal" { "" } else { words::nutrient(line.title, tongue) };
        let mut cells = vec![title.to_owned(), words::figure(&line.in_100_g, line.unit, tongue)];
        if let Some(shown) = &line.in_portion {
            cells.push(words::figure(shown, line.unit, tongue));
            cells.push(line.intake.map(|share| tongue.print.percent(share, 0)).unwrap_or_default());
        }
        json!({ "part": line.is_part, "cells": cells })
    });
    let note = declaration.portion.map(|_| format!("* {}", tongue.label_intake()));
    json!({ "head": head, "rows": rows.collect::<Vec<_>>(), "note": note })
}

fn stated(facts: &Facts) -> Value {
    let serving = &facts.serving;
    let rows = |traces: bool| -> Vec<Value> { facts.lines.iter().filter(|line| line.is_trace == traces).map(row).collect() };
    json!({
        "title": "Nutrition Facts",
        "servings": words::servings(serving),
        "serving": ["Serving size", format!("{} ({}g)", serving.measure, serving.gram)],
        "amount": "Amount per serving",
        "calories": ["Calories", words::figure(&facts.calories, "", Tongue::default())],
        "head": "% Daily Value*",
        "rows": rows(false),
        "traces": rows(true),
        "note": words::DAILY,
    })
}

fn row(line: &FactLine) -> Value {
    let (strong, words) = words::fact(line);
    let daily = line.daily.map(|daily| format!("{daily}%")).unwrap_or_default();
    json!({ "strong": strong, "words": words, "depth": line.depth, "daily": daily })
}
