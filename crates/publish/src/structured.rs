//! A formula as schema.org Recipe, word for word what the page shows.

use crate::method::sentence;
use crate::needs::needs;
use crate::page::Leaf;
use crate::serving::Serving;
use crate::site::{page_address, page_name};
use crate::words::{Units, makes};
use formula::Formula;
use plan::hours;
use quantity::{TimeSpan, print};
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

/// The recipe as JSON-LD, safe to stand in a script element.
pub fn recipe(formula: &Formula, leaf: &Leaf) -> String {
    // "</" would end the script element, and "<!--" would begin a comment in it.
    recipe_value(formula, leaf).to_string().replace('<', "\\u003c")
}

fn recipe_value(formula: &Formula, leaf: &Leaf) -> Value {
    let units = Units::for_readers(leaf.settings);
    let mut data = Map::new();
    data.insert("@context".to_owned(), json!("https://schema.org"));
    data.insert("@type".to_owned(), json!("Recipe"));
    data.extend(about(formula, leaf));
    data.extend(times(formula));
    let ingredients: Vec<String> = (0..formula.components.len())
        .flat_map(|c| needs(formula, c, units, leaf.settings.eggs))
        .map(|need| need.in_words(units.tongue))
        .collect();
    data.insert("recipeIngredient".to_owned(), json!(ingredients));
    let tools: Vec<Value> = tools(formula).into_iter().map(|tool| json!({ "@type": "HowToTool", "name": tool })).collect();
    if !tools.is_empty() {
        data.insert("tool".to_owned(), Value::Array(tools));
    }
    data.insert("recipeInstructions".to_owned(), Value::Array(instructions(formula, units)));
    if let Some(serving) = Serving::of(formula, units.tongue) {
        data.insert("nutrition".to_owned(), nutrition(&serving));
    }
    Value::Object(data)
}

/// What stands at the head of the page.
fn about(formula: &Formula, leaf: &Leaf) -> Vec<(String, Value)> {
    let (head, settings) = (&formula.head, leaf.settings);
    let address = page_address(settings, &page_name(&formula.name));
    let picture = leaf.picture.and_then(|picture| picture.address(settings));
    let book = || json!({ "@type": "CreativeWork", "name": settings.title });
    let told: [(&str, Option<Value>); 11] = [
        ("name", Some(json!(head.title))),
        ("inLanguage", Some(json!(settings.language))),
        ("url", address.as_ref().map(|address| json!(address))),
        ("mainEntityOfPage", address.as_ref().map(|address| json!(address))),
        ("image", picture.map(|address| json!([address]))),
        ("description", (!head.intro.is_empty()).then(|| json!(head.intro))),
        ("author", settings.author.as_ref().map(|author| json!({ "@type": "Person", "name": author }))),
        ("isPartOf", (!settings.title.is_empty()).then(book)),
        ("creditText", head.source.as_ref().map(|source| json!(source))),
        ("keywords", (!head.tags.is_empty()).then(|| json!(head.tags.join(", ")))),
        ("recipeYield", formula.components.first().map(|main| json!(makes(main, leaf.tongue())))),
    ];
    told.into_iter().filter_map(|(key, value)| Some((key.to_owned(), value?))).collect()
}

/// The upper ends of the times that the page shows; waits count in the whole.
fn times(formula: &Formula) -> impl Iterator<Item = (String, Value)> {
    let hours = hours(formula);
    let times = [("prepTime", hours.preparing), ("cookTime", hours.cooking), ("totalTime", hours.total)];
    let told = times.into_iter().filter(|(_, span)| span.to > TimeSpan::ZERO);
    told.map(|(key, span)| (key.to_owned(), json!(print::rounded_time(span).to.iso_8601())))
}

/// What is worked with, each once.
pub fn tools(formula: &Formula) -> BTreeSet<&str> {
    formula.steps().flat_map(|(_, step)| &step.equipment).map(String::as_str).collect()
}

/// A section a stage, a step a step.
fn instructions(formula: &Formula, units: Units) -> Vec<Value> {
    let mut sections = Vec::new();
    for (c, component) in formula.components.iter().enumerate() {
        for (s, stage) in component.stages.iter().enumerate().filter(|(_, stage)| !stage.steps.is_empty()) {
            let step = |step| json!({ "@type": "HowToStep", "text": sentence(formula, (c, s), step, units) });
            let steps: Vec<Value> = stage.steps.iter().map(step).collect();
            sections.push(json!({ "@type": "HowToSection", "name": stage.title, "itemListElement": steps }));
        }
    }
    sections
}

fn nutrition(serving: &Serving) -> Value {
    let mut data = Map::new();
    data.insert("@type".to_owned(), json!("NutritionInformation"));
    data.insert("servingSize".to_owned(), json!(serving.size));
    data.insert("calories".to_owned(), json!(serving.kilocalories));
    data.extend(serving.lines.iter().map(|line| (line.property.to_owned(), json!(line.content))));
    Value::Object(data)
}
