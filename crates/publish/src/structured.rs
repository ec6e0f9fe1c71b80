//! A formula as schema.org Recipe, word for word what the page shows.

use crate::method::sentence;
use crate::needs::needs;
use crate::words::{Units, makes};
use formula::Formula;
use formula::read::BookSettings;
use plan::hours;
use quantity::{TimeSpan, print};
use serde_json::{Map, Value, json};

/// The recipe as JSON-LD, safe to stand in a script element.
pub fn recipe(formula: &Formula, settings: &BookSettings) -> String {
    // "</" would end the script element, and "<!--" would begin a comment in it.
    recipe_value(formula, settings).to_string().replace('<', "\\u003c")
}

fn recipe_value(formula: &Formula, settings: &BookSettings) -> Value {
    let units = Units::of(settings);
    let mut data = Map::new();
    let mut put = |key: &str, value: Value| {
        data.insert(key.to_owned(), value);
    };
    put("@context", json!("https://schema.org"));
    put("@type", json!("Recipe"));
    put("name", json!(formula.head.title));
    put("inLanguage", json!(settings.language));
    if !formula.head.intro.is_empty() {
        put("description", json!(formula.head.intro));
    }
    if let Some(author) = &settings.author {
        put("author", json!({ "@type": "Person", "name": author }));
    }
    if !formula.head.tags.is_empty() {
        put("keywords", json!(formula.head.tags.join(", ")));
    }
    if let Some(main) = formula.components.first() {
        put("recipeYield", json!(makes(main)));
    }
    let hours = hours(formula);
    let times = [("prepTime", hours.preparing), ("cookTime", hours.cooking), ("totalTime", hours.total)];
    for (key, span) in times.into_iter().filter(|(_, span)| span.to > TimeSpan::ZERO) {
        put(key, json!(print::rounded_time(span).to.iso_8601()));
    }
    let ingredients: Vec<String> =
        (0..formula.components.len()).flat_map(|c| needs(formula, c, units, settings.eggs)).map(|need| need.in_words()).collect();
    put("recipeIngredient", json!(ingredients));
    put("recipeInstructions", Value::Array(instructions(formula, units)));
    Value::Object(data)
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
