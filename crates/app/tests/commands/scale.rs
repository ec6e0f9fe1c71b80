//! `scale`: every target, and the refusals.

use crate::sandbox::Sandbox;
use serde_json::Value;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const RYE: &str = "saltmarsh/formulas/caraway-rye-tin.toml";

fn scaled(words: &[&str]) -> Value {
    let out = Sandbox::with_demo().fine(&[&["scale"], words, &["--format", "json"]].concat());
    let sheets: Value = serde_json::from_str(&out).expect("JSON");
    sheets[0]["components"][0].clone()
}

#[track_caller]
fn close(value: &Value, expected: f64) {
    let got = value.as_f64().expect("a number");
    assert!((got - expected).abs() < 1e-6 * expected.abs().max(1.0), "{got} is not {expected}");
}

#[test]
fn to_pieces_and_their_weight() {
    let larger = scaled(&[MUFFINS, "--pieces", "30"]);
    close(&larger["yield"]["pieces"], 30.0);
    close(&larger["total-flour-grams"], 480.0 * 30.0 / 12.0);
    let heavier = scaled(&[MUFFINS, "--pieces", "12", "--each", "105 g"]);
    close(&heavier["yield"]["pieces"], 12.0);
    close(&heavier["yield"]["scaling-weight-grams"], 105.0);
    close(&heavier["total-flour-grams"], 480.0 * 105.0 / 84.0);
}

#[test]
fn to_weights() {
    close(&scaled(&[MUFFINS, "--total", "2 kg"])["yield"]["raw-grams"], 2000.0);
    close(&scaled(&[MUFFINS, "--done", "1 kg"])["yield"]["done-grams"], 1000.0);
    close(&scaled(&[MUFFINS, "--flour", "1 kg"])["total-flour-grams"], 1000.0);
    close(&scaled(&[MUFFINS, "--factor", "0.5"])["total-flour-grams"], 240.0);
}

#[test]
fn to_a_tin_and_to_a_ring() {
    // The formula is written for two tins of 1.6 l.
    let before = scaled(&[RYE, "--factor", "1"])["yield"]["raw-grams"].as_f64().expect("gram");
    close(&scaled(&[RYE, "--tin", "10 x 10 x 8 cm"])["yield"]["raw-grams"], before * 0.8 / 3.2);
    close(&scaled(&[RYE, "--fill", "10 x 10 x 4 cm", "--density", "1.1"])["yield"]["raw-grams"], 440.0);
}

#[test]
fn to_the_eggs_at_hand() {
    let sandbox = Sandbox::with_demo();
    let out = sandbox.fine(&["scale", MUFFINS, "--at-hand", "egg-whole=3"]);
    assert!(out.contains("3 whole is") && out.contains("size M"), "{out}");
}

#[test]
fn what_cannot_be() {
    let sandbox = Sandbox::with_demo();
    for (words, reason) in [
        (vec!["scale", MUFFINS, "--factor", "0"], "above nothing"),
        (vec!["scale", MUFFINS, "--factor", "nan"], "above nothing"),
        (vec!["scale", MUFFINS, "--tin", "2 l"], "does not state the tin"),
        (vec!["scale", MUFFINS, "--total", "two kilos"], "no weight"),
        (vec!["scale", MUFFINS, "--at-hand", "saffron=1 g"], "no line"),
        (vec!["scale", "saltmarsh", "--factor", "2"], "which formula?"),
        (vec!["scale", MUFFINS], "required"),
    ] {
        let ran = sandbox.run(&words);
        assert_eq!(ran.status, 2, "{words:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{words:?}: {}", ran.err);
    }
}
