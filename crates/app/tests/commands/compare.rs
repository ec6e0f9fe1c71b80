//! `compare`: formulas and revisions side by side.

use crate::sandbox::Sandbox;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const KNOTS: &str = "saltmarsh/formulas/cardamom-knots.toml";

#[test]
fn two_formulas_side_by_side() {
    insta::assert_snapshot!("comparison_as_text", Sandbox::with_demo().fine(&["compare", MUFFINS, KNOTS]));
}

/// Two revisions bear the same name: their paths tell them apart.
#[test]
fn two_revisions_of_one_formula() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("saltmarsh/drafts/potato-muffins.toml", sandbox.read(MUFFINS).replace("salt = \"2.4 %\"", "salt = \"2 %\""));
    let out = sandbox.fine(&["compare", MUFFINS, "saltmarsh/drafts/potato-muffins.toml", "--format", "json"]);
    let value: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(value["formulas"][1], "saltmarsh/drafts/potato-muffins.toml");
    let rows = value["parts"].as_array().expect("parts").iter().flat_map(|part| part["rows"].as_array().expect("rows"));
    let differing: Vec<&str> = rows.filter(|row| row["difference"] != "same").filter_map(|row| row["title"].as_str()).collect();
    assert!(differing.contains(&"salt") && !differing.contains(&"water"), "{differing:?}");
}

#[test]
fn formulas_of_a_book_by_name() {
    let out = Sandbox::with_demo().fine(&["compare", "saltmarsh", "--formula", "potato-muffins", "--formula", "caraway-rye-tin"]);
    assert!(out.starts_with("potato-muffins / caraway-rye-tin"), "{out}");
}

#[test]
fn what_cannot_be() {
    let sandbox = Sandbox::with_demo();
    for (words, reason) in [
        (vec!["compare", MUFFINS], "two to 12 formulas"),
        (vec!["compare", "saltmarsh", "--formula", "buns"], "no formula called “buns”"),
        (vec!["compare", MUFFINS, "nowhere.toml"], "no such file"),
        (vec!["compare", MUFFINS, KNOTS, "--room", "warm"], "no temperature"),
        (vec!["compare"], "required"),
    ] {
        let ran = sandbox.run(&words);
        assert_eq!(ran.status, 2, "{words:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{words:?}: {}", ran.err);
    }
}
