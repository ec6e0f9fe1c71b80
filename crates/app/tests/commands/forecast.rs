//! `forecast`: the story, the data, the refusals.

use crate::sandbox::Sandbox;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";

#[test]
fn the_story_of_a_forecast() {
    insta::assert_snapshot!("forecast_as_text", Sandbox::with_demo().fine(&["forecast", MUFFINS]));
}

#[test]
fn a_colder_kitchen_is_slower() {
    let sandbox = Sandbox::with_demo();
    let hours = |room: &str| {
        let out = sandbox.fine(&["forecast", "saltmarsh/formulas/cardamom-knots.toml", "--room", room, "--format", "json"]);
        let value: serde_json::Value = serde_json::from_str(&out).expect("JSON");
        assert_eq!(value[0]["kitchen"]["room"]["value"].as_f64(), room.trim_end_matches(" °C").parse().ok());
        value[0]["rises"][0]["mixed"]["computed"]["value"].as_f64().expect("a temperature")
    };
    assert!(hours("17 °C") < hours("25 °C"), "flour as warm as the room");
}

/// No figure without its unit and origin, in any formula of the demo; the courses are for charts and the countdown for clocks, and
/// each says beside it what it goes by.
#[test]
fn every_figure_has_its_unit_and_origin() {
    let out = Sandbox::with_demo().fine(&["forecast", "saltmarsh", "--format", "json"]);
    let value: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let mut bare = Vec::new();
    let figures = bare_figures(&value, "", false, &mut bare);
    assert_eq!(bare, Vec::<String>::new());
    assert!(figures > 300, "{figures} figures");
    assert!(out.contains("Zanoni") && out.contains("heat::starch_setting") && out.contains("keeping::salmonella"));
}

/// Counts the numbers below a value, and keeps the paths of those that nothing says the origin of.
fn bare_figures(value: &serde_json::Value, path: &str, is_told: bool, bare: &mut Vec<String>) -> usize {
    match value {
        serde_json::Value::Number(_) => {
            bare.extend((!is_told).then(|| path.to_owned()));
            1
        }
        serde_json::Value::Array(all) => all.iter().map(|one| bare_figures(one, path, is_told, bare)).sum(),
        serde_json::Value::Object(fields) => {
            let own = fields.contains_key("origin") && fields.contains_key("unit");
            let one = |(key, field): (&String, &serde_json::Value)| {
                let is_course = fields.contains_key(&format!("{key}-origin"));
                bare_figures(field, &format!("{path}/{key}"), own || is_told || is_course, bare)
            };
            fields.iter().map(one).sum()
        }
        _ => 0,
    }
}

/// The number at a figure leads to the list at the end, which has no number that no figure names.
#[test]
fn figures_lead_to_their_grounds() {
    let out = Sandbox::with_demo().fine(&["forecast", MUFFINS]).replace('\u{a0}', " ");
    let (story, list) = out.split_once("Where the figures come from").expect("grounds");
    let listed = list.lines().filter(|line| line.starts_with('[')).count();
    assert!(listed > 15, "{list}");
    for number in 1..=listed {
        assert!(story.contains(&format!("[{number}]")) && list.contains(&format!("\n[{number}] ")), "{number}");
    }
    assert!(!story.contains(&format!("[{}]", listed + 1)));
}

#[test]
fn another_kitchen_of_the_book() {
    let out = Sandbox::with_demo().fine(&["forecast", MUFFINS, "--kitchen", "boathouse"]);
    assert!(out.contains("The boathouse"), "{out}");
}

#[test]
fn nonsense_kitchens_are_told_so() {
    let sandbox = Sandbox::with_demo();
    for (words, reason) in [
        (vec!["forecast", MUFFINS, "--room", "-300 °C"], "no temperature of a kitchen"),
        (vec!["forecast", MUFFINS, "--fridge", "50 °C"], "no temperature of a fridge"),
        (vec!["forecast", MUFFINS, "--draws", "1"], "from 20 to 100000 kitchens"),
        (vec!["forecast", MUFFINS, "--draws", "-5"], "from 20 to 100000 kitchens"),
        (vec!["forecast", MUFFINS, "--room", "warm"], "no temperature of a kitchen"),
        (vec!["forecast", MUFFINS, "--kitchen", "cellar"], "no kitchen called “cellar”"),
        (vec!["forecast", "saltmarsh", "--formula", "potato-mufins"], "did you mean “potato-muffins”?"),
        (vec!["forecast", "saltmarsh", "--kitchen", "boathose"], "did you mean “boathouse”?"),
    ] {
        let ran = sandbox.run(&words);
        assert_eq!(ran.status, 2, "{words:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{words:?}: {}", ran.err);
    }
}
