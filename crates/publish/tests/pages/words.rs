//! Both unit systems, and what stands on a page.

use crate::demo::{book, formulas, visible};
use formula::read::BookSettings;
use publish::Units;
use publish::page::{Leaf, formula_page, index_page};
use quantity::{Measure, SpoonSystem};

#[track_caller]
fn check(written: &str, units: Units, expected: &str) {
    let measure: Measure = written.parse().expect("a figure");
    assert_eq!(units.measure(&measure).replace(['\u{a0}', '\u{202f}'], " "), expected);
}

/// Conversions by the exact definitions of NIST SP 811 (inch, ounce, degree Fahrenheit), rounded as dials and rulers are.
#[test]
fn figures_in_two_systems() {
    let metric = Units::default();
    let both = Units { spoons: SpoonSystem::Metric, second: Some(SpoonSystem::UsCustomary), ..Units::default() };
    for (written, alone, beside) in [
        ("180 °C", "180 °C", "180 °C (355 °F)"),
        ("23 °C", "23 °C", "23 °C (73 °F)"),
        ("350 °F", "177 °C", "177 °C (350 °F)"),
        ("96 °C", "96 °C", "96 °C (205 °F)"),
        ("2 lb", "907 g", "907 g (2 lb)"),
        ("20 cm", "20 cm", "20 cm (7¾ in)"),
        ("5 mm", "5 mm", "5 mm (¼ in)"),
        ("500 g", "500 g", "500 g (1 lb 1.6 oz)"),
        ("250 ml", "250 ml", "250 ml (1 cup)"),
        ("12-18 h", "12–18 h", "12–18 h"),
    ] {
        check(written, metric, alone);
        check(written, both, beside);
    }
}

#[test]
fn a_page_has_one_heading_of_the_first_rank_and_its_language() {
    let book = book();
    for formula in formulas(&book) {
        let page = formula_page(&formula, &Leaf::alone(&book.settings));
        assert_eq!(page.matches("<h1").count(), 1);
        assert!(page.contains("<html lang=\"en-GB\">"));
        assert!(page.contains("name=\"viewport\""));
    }
}

/// Allergens are named, alcohol and hot fat are warned of, and nobody is told that something is safe.
#[test]
fn what_must_be_minded_is_said() {
    let book = book();
    for formula in formulas(&book) {
        let text = visible(&formula_page(&formula, &Leaf::alone(&book.settings)));
        assert!(text.contains("your local food rules"), "{}", formula.name);
        assert!(!text.contains("gluten-free"), "{}", formula.name);
        let expected: &[&str] = match formula.name.as_str() {
            "potato-muffins" => &["Contains: wheat, eggs, milk", "Raw flour", "Raw egg", "Hot sugar"],
            "caraway-rye-tin" => &["wheat", "rye", "Raw flour"],
            "cardamom-knots" => &["wheat", "eggs", "milk", "almond", "Raw egg"],
            "cider-apple-fritters" => &["Hot fat", "Alcohol", "milk"],
            "buckwheat-chickpea-griddle-bread" => &["Raw flour"],
            _ => &[],
        };
        for words in expected {
            assert!(text.contains(words), "{} does not say “{words}”", formula.name);
        }
    }
}

#[test]
fn a_book_without_settings_still_has_an_index() {
    let page = index_page(&[], &BookSettings::default());
    assert!(visible(&page).contains("Formulas"));
}
