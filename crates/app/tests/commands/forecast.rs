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
        assert_eq!(value[0]["room"]["celsius"].as_f64(), room.trim_end_matches(" °C").parse().ok());
        value[0]["rises"][0]["mixed"]["computed"]["celsius"].as_f64().expect("a temperature")
    };
    assert!(hours("17 °C") < hours("25 °C"), "flour as warm as the room");
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
