//! `scale`: every target, and the refusals.

use crate::sandbox::{Sandbox, small_formula};
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

/// Milk weighs what its density says: half a litre is twice a quarter, a metric cup is 250 ml.
#[test]
fn to_what_is_at_hand_in_any_measure() {
    let flour = |at_hand: &str| {
        let flour = scaled(&[MUFFINS, "--at-hand", at_hand])["total-flour-grams"].clone();
        flour.as_f64().expect("gram")
    };
    assert!((flour("milk-whole=1/2 l") / flour("milk-whole=1 cup") - 2.0).abs() < 1e-9);
    assert!((flour("milk-whole=400 g") / flour("Whole Milk=200 g") - 2.0).abs() < 1e-9);
    // 1.03 kg a litre: common practice, no source.
    assert!((flour("milk-whole=1 l") / flour("milk-whole=1030 g") - 1.0).abs() < 0.01);
    // Four eggs of EU class L (63 to 73 g) weigh more than four of M (53 to 63 g), Delegated Regulation (EU) 2023/2465.
    assert!(flour("egg-whole=4 L") > flour("egg-whole=4 M"));
    assert!((flour("egg-whole=4") / flour("egg-whole=4 M") - 1.0).abs() < 1e-9);
    assert!((flour("egg-whole=4 large") / flour("egg-whole=2 large") - 2.0).abs() < 1e-9);
}

#[test]
fn by_a_factor_as_people_write_it() {
    for half in ["0,5", "1/2", "½", ".5"] {
        close(&scaled(&[MUFFINS, "--factor", half])["total-flour-grams"], 240.0);
    }
}

/// Written for two tins of 1.6 l, a loaf each: one tin of 23 x 13 x 7 cm holds 2.093 l, and one loaf.
#[test]
fn a_tin_holds_a_loaf() {
    let before = scaled(&[RYE, "--factor", "1"])["yield"]["raw-grams"].as_f64().expect("gram");
    let one = scaled(&[RYE, "--tin", "23 x 13 x 7 cm"]);
    close(&one["yield"]["pieces"], 1.0);
    close(&one["yield"]["scaling-weight-grams"], before * 2.093 / 3.2);
    let three = scaled(&[RYE, "--tin", "23 x 13 x 7 cm", "--tins", "3"]);
    close(&three["yield"]["pieces"], 3.0);
    close(&three["yield"]["scaling-weight-grams"], before * 2.093 / 3.2);
}

#[test]
fn eggs_are_told_in_the_size_they_are_written_in() {
    let sandbox = Sandbox::empty();
    sandbox.write(
        "flat.toml",
        small_formula("flour-bread = \"500 g\"\negg-whole = \"3 large\"", "Mix {flour-bread} and {egg-whole}."),
    );
    let out = sandbox.fine(&["scale", "flat.toml", "--factor", "2"]);
    assert!(out.contains("size large: 6 whole is"), "{out}");
    assert!(!out.contains("0.0") && !out.contains("(+0"), "an exact number of eggs is off by nothing:\n{out}");
    let out = sandbox.fine(&["scale", "flat.toml", "--factor", "0.5"]);
    assert!(out.contains("(\u{2212}33.3\u{a0}%)") && out.contains("(+33.3\u{a0}%)"), "{out}");
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
        (vec!["scale", MUFFINS, "--at-hand", "milk-whole"], "names no ingredient with its amount"),
        (vec!["scale", MUFFINS, "--at-hand", "milk-whole=2 large"], "is no egg"),
        (vec!["scale", MUFFINS, "--at-hand", "milk-whole=2"], "no piece weight is known for"),
        (vec!["scale", MUFFINS, "--at-hand", "milk-whole=2 pints"], "“pints” is not a unit"),
        (vec!["scale", MUFFINS, "--at-hand", "milk-whole=3 %"], "must be a weight, a volume or a count"),
        (vec!["scale", MUFFINS, "--at-hand", "milk-whole=0 g"], "above nothing"),
        (vec!["scale", MUFFINS, "--pieces", "-3"], "above nothing"),
        (vec!["scale", MUFFINS, "--factor", "1/0"], "divides by zero"),
        (vec!["scale", MUFFINS, "--factor", "2x"], "“x” does not belong to a number"),
        (vec!["scale", MUFFINS, "--factor", "1000000000000"], "more than any kitchen holds"),
        (vec!["scale", MUFFINS, "--total", "2000000000000 g"], "more than any kitchen holds"),
        (vec!["scale", MUFFINS, "--pieces", "9000000000000", "--each", "0.000001 g"], "more than any kitchen holds"),
        (vec!["scale", RYE, "--factor", "2", "--tins", "3"], "--tins says nothing without --tin"),
        (vec!["scale", MUFFINS, "--total", "1 kg", "--each", "80 g"], "--each says nothing without --pieces"),
        (vec!["scale", MUFFINS, "--total", "1 kg", "--density", "1"], "--density says nothing without --fill"),
        (vec!["scale", "saltmarsh/formulas/base-syrup.toml", "--flour", "1 kg"], "it has no flour"),
        (vec!["scale", "saltmarsh", "--factor", "2"], "which formula?"),
        (vec!["scale", MUFFINS], "required"),
    ] {
        let ran = sandbox.run(&words);
        assert_eq!(ran.status, 2, "{words:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{words:?}: {}", ran.err);
    }
}
