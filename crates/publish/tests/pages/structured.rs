//! schema.org Recipe (type definitions of schema-dts 2.1.0): complete, valid, and equal to what is visible.

use crate::demo::{book, folded, formulas, visible};
use publish::page::{Leaf, formula_page};
use serde_json::Value;

fn data_of(page: &str) -> Value {
    let text =
        page.split("application/ld+json\">").nth(1).and_then(|rest| rest.split("</script>").next()).expect("structured data");
    serde_json::from_str(text).expect("JSON")
}

fn pages() -> Vec<(String, Value)> {
    let book = book();
    let pages = formulas(&book).into_iter().map(|formula| formula_page(&formula, &Leaf::alone(&book.settings)));
    pages.map(|page| (visible(&page), data_of(&page))).chain([]).collect()
}

#[test]
fn every_stated_word_is_visible() {
    for (text, data) in pages() {
        let shown = |value: &Value| {
            let words = folded(value.as_str().expect("a text"));
            assert!(text.contains(&words), "not visible on the page: {words}");
        };
        shown(&data["name"]);
        shown(&data["recipeYield"]);
        data["recipeIngredient"].as_array().expect("ingredients").iter().for_each(shown);
        for section in data["recipeInstructions"].as_array().expect("sections") {
            assert_eq!(section["@type"], "HowToSection");
            shown(&section["name"]);
            for step in section["itemListElement"].as_array().expect("steps") {
                assert_eq!(step["@type"], "HowToStep");
                shown(&step["text"]);
            }
        }
        for paragraph in data["description"].as_str().unwrap_or_default().split("\n\n") {
            assert!(text.contains(&folded(paragraph)));
        }
    }
}

/// Durations are ISO 8601 and the total holds the waits: never below preparing and cooking together.
#[test]
fn times_are_valid_and_add_up() {
    let book = book();
    for formula in formulas(&book) {
        let page = formula_page(&formula, &Leaf::alone(&book.settings));
        let data = data_of(&page);
        let seconds = |key: &str| data[key].as_str().map_or(0.0, seconds_of);
        assert!(seconds("totalTime") * 1.05 + 600.0 >= seconds("prepTime") + seconds("cookTime"), "{}", formula.name);
        for key in ["prepTime", "cookTime", "totalTime"] {
            if let Some(stated) = data[key].as_str() {
                assert!(page.contains(&format!("datetime=\"{stated}\"")), "{key} {stated} is not visible in {}", formula.name);
            }
        }
    }
}

/// Reads P1DT2H30M by the grammar of ISO 8601, panicking on anything else.
fn seconds_of(duration: &str) -> f64 {
    let rest = duration.strip_prefix('P').expect("P");
    let (days, clock) = rest.split_once('T').unwrap_or((rest, ""));
    let read = |text: &str, units: &[(char, f64)]| {
        let (mut sum, mut digits) = (0.0, String::new());
        for letter in text.chars() {
            match units.iter().find(|(unit, _)| *unit == letter) {
                Some((_, size)) => sum += std::mem::take(&mut digits).parse::<f64>().expect("digits") * size,
                None => digits.push(letter),
            }
        }
        assert!(digits.is_empty(), "{duration} ends without a unit");
        sum
    };
    assert!(rest.len() > 1, "{duration} is empty");
    read(days, &[('D', 86_400.0)]) + read(clock, &[('H', 3600.0), ('M', 60.0), ('S', 1.0)])
}

/// One recipe a page, with what a consumer needs.
#[test]
fn the_needed_properties_are_there() {
    for (_, data) in pages() {
        assert_eq!(data["@context"], "https://schema.org");
        assert_eq!(data["@type"], "Recipe");
        for key in ["name", "description", "author", "recipeYield", "totalTime", "recipeIngredient", "recipeInstructions"] {
            assert!(!data[key].is_null(), "{key} is missing");
        }
        // No claim that ingredients alone cannot carry.
        assert!(data["suitableForDiet"].is_null());
    }
}
