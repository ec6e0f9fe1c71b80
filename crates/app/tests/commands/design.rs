//! `design`: plans as bakers ask for them, and refusals.

use crate::sandbox::Sandbox;

#[test]
fn three_factors_on_two_days() {
    let words = [
        "design",
        "--factor",
        "leaven=sponge,poolish",
        "--factor",
        "yeast=0.5 %,1 %",
        "--factor",
        "water=65 %,70 %",
        "--a-day",
        "4",
        "--days",
        "2",
        "--seed",
        "7",
    ];
    let out = Sandbox::empty().fine(&words);
    insta::assert_snapshot!("design_in_blocks", out);
    assert_eq!(out, Sandbox::empty().fine(&words), "the same seed gives the same plan");
}

#[test]
fn a_part_of_many_combinations() {
    let factors = ["a=1,2", "b=1,2", "c=1,2", "d=1,2"].map(|factor| ["--factor", factor]).concat();
    let words = [&["design", "--a-day", "8", "--test", "preference"][..], &factors].concat();
    insta::assert_snapshot!("design_in_part", Sandbox::empty().fine(&words));
}

#[test]
fn a_plan_as_data() {
    let words = ["design", "--factor", "flour=A,B,C", "--a-day", "2", "--days", "3", "--test", "paired", "--format", "json"];
    let value: serde_json::Value = serde_json::from_str(&Sandbox::empty().fine(&words)).expect("JSON");
    assert_eq!(value["made-up"]["kind"], "balanced incomplete blocks");
    assert_eq!(value["days"].as_array().map(Vec::len), Some(3));
    assert!(value["tasting"]["panel"]["tasters"].as_u64().is_some_and(|tasters| tasters % 2 == 0));
}

#[test]
fn what_cannot_be_planned_is_told_so() {
    for (words, reason) in [
        (vec!["--factor", "yeast", "--a-day", "4"], "is no factor"),
        (vec!["--factor", "=1,2", "--a-day", "4"], "is no factor"),
        (vec!["--factor", "yeast=1", "--a-day", "4"], "at least two different levels"),
        (vec!["--factor", "yeast=1,1", "--a-day", "4"], "at least two different levels"),
        (vec!["--factor", "a=1,2", "--factor", "a=1,2", "--a-day", "4"], "two factors are called"),
        (vec!["--factor", "a=1,2,3", "--factor", "b=1,2,3", "--a-day", "4"], "9 batches are the fewest"),
        (vec!["--factor", "a=1,2", "--a-day", "0"], "0 can be baked"),
        (vec!["--factor", "a=1,2", "--a-day", "4", "--tell", "many"], "no share of people"),
        (vec!["--factor", "a=1,2", "--a-day", "4", "--power", "100 %"], "no share of people"),
        (vec!["--factor", "a=1,2", "--a-day", "18446744073709551615", "--days", "9"], "at most"),
        (vec!["--a-day", "4"], "required"),
    ] {
        let ran = Sandbox::empty().run(&[&["design"][..], &words].concat());
        assert_eq!(ran.status, 2, "{words:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{words:?}: {}", ran.err);
    }
}

/// Each batch becomes the draft of a trial, which the book reads without a fault and learns nothing from; none is written over.
#[test]
fn a_plan_is_kept_as_drafts_of_trials() {
    let sandbox = Sandbox::with_demo();
    let words = [
        "design",
        "--factor",
        "yeast \"dry\"=0.5 %,1 %",
        "--a-day",
        "2",
        "--days",
        "2",
        "--into",
        "saltmarsh",
        "--formula",
        "cardamom-knots",
        "--begin",
        "2026-12-31",
    ];
    let ran = sandbox.run(&words);
    assert_eq!((ran.status, ran.err.contains("4 trials drafted")), (0, true), "{}", ran.err);
    let drafts: Vec<String> = sandbox.files("saltmarsh/trials").into_iter().filter(|file| file.contains("-bowl-")).collect();
    assert_eq!(drafts.len(), 4);
    assert_eq!(drafts.iter().filter(|file| file.starts_with("2027-01-01")).count(), 2, "{drafts:?}");
    assert!(sandbox.fine(&["check", "saltmarsh"]).trim().is_empty());
    let text = sandbox.read(&format!("saltmarsh/trials/{}", drafts[0]));
    assert!(text.contains("yeast \\\"dry\\\" ") && text.contains("left-out = \"not baked yet\""), "{text}");
    let again = sandbox.run(&words);
    assert!(again.status == 2 && again.err.contains("is there already"), "{}", again.err);
    let page = sandbox.fine(&["design", "--factor", "<b>=1,2", "--a-day", "2", "--format", "html"]);
    assert!(page.contains("Labels for the bowls") && page.contains("&lt;b&gt;"), "{page}");
}
