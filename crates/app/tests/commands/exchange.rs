//! `exchange`: the report, what is written and what never is, the refusals.

use crate::sandbox::Sandbox;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const KNOTS: &str = "saltmarsh/formulas/cardamom-knots.toml";
const RYE: &str = "saltmarsh/formulas/caraway-rye-tin.toml";

#[test]
fn what_can_be_exchanged() {
    insta::assert_snapshot!("exchanges_of_a_formula", Sandbox::with_demo().fine(&["exchange", MUFFINS]));
}

/// The sponge of the demo for ripe rye culture.
#[test]
fn the_sponge_for_rye_culture() {
    let words = ["exchange", MUFFINS, "leaven", "--of", "sponge", "--into", "rye-culture"];
    insta::assert_snapshot!("exchange_as_text", Sandbox::with_demo().fine(&words));
}

/// As other programs get it: the new text is a formula that passes proof-reading.
#[test]
fn the_new_text_is_sound() {
    for (formula, words) in [
        (MUFFINS, vec!["leaven", "--of", "sponge", "--into", "rye-culture"]),
        (MUFFINS, vec!["leaven", "--of", "sponge", "--into", "rye-culture", "--share", "100 %"]),
        (MUFFINS, vec!["straight"]),
        (MUFFINS, vec!["milk"]),
        (MUFFINS, vec!["butter"]),
        (MUFFINS, vec!["honey", "--of", "sugar-caster", "--share", "50 %"]),
        (MUFFINS, vec!["altitude", "--altitude", "2500 m"]),
        (KNOTS, vec!["yeast", "--into", "yeast-fresh"]),
        (KNOTS, vec!["egg-size", "--into", "L"]),
        (KNOTS, vec!["egg-parts"]),
        (KNOTS, vec!["flour", "--into", "flour-wholewheat", "--share", "20 %"]),
        (KNOTS, vec!["tin", "--from", "1 l", "--into", "2 l"]),
        (RYE, vec!["leaven", "--of", "levain"]),
        (RYE, vec!["tin", "--into", "2 l"]),
    ] {
        let sandbox = Sandbox::with_demo();
        let mut all = vec!["exchange", formula];
        all.extend(&words);
        all.extend(["--write", "saltmarsh/formulas/new.toml", "--format", "json"]);
        let out = sandbox.fine(&all);
        let value: serde_json::Value = serde_json::from_str(&out).expect("JSON");
        let text = sandbox.read("saltmarsh/formulas/new.toml");
        assert_eq!(value["text"].as_str(), Some(text.as_str()), "{words:?}");
        let found = sandbox.run(&["check", "saltmarsh/formulas/new.toml"]);
        // The notes still name the old allergens: that is told, and is for the author to word.
        assert!(!found.out.contains("error["), "{words:?}\n{}", found.out);
    }
}

#[test]
fn nothing_is_written_unless_asked() {
    let sandbox = Sandbox::with_demo();
    let before = sandbox.read(KNOTS);
    let words = ["exchange", KNOTS, "yeast", "--into", "yeast-dry"];
    let ran = sandbox.run(&words);
    assert!(ran.err.contains("nothing is written"), "{}", ran.err);
    assert_eq!(sandbox.read(KNOTS), before);
    let taken = sandbox.run(&[&words[..], &["--write", MUFFINS]].concat());
    assert_eq!(taken.status, 2);
    assert!(taken.err.contains("is there already"), "{}", taken.err);
    sandbox.fine(&[&words[..], &["--in-place"]].concat());
    assert!(sandbox.read(KNOTS).contains("yeast-dry = "));
}

#[test]
fn what_cannot_be() {
    let sandbox = Sandbox::with_demo();
    for (words, reason) in [
        (vec!["exchange", "saltmarsh", "yeast"], "which formula?"),
        (vec!["exchange", MUFFINS, "leavening"], "there are: leaven, preferment"),
        (vec!["exchange", MUFFINS, "tin", "--into", "2 l"], "does not state its tin"),
        (vec!["exchange", MUFFINS, "preferment"], "plain water"),
        (vec!["exchange", MUFFINS, "leaven", "--of", "sponge", "--into", "salt"], "cultures here: rye-culture"),
        (vec!["exchange", MUFFINS, "leaven", "--of", "cellar"], "it has: sponge, dough"),
        (vec!["exchange", MUFFINS, "honey", "--share", "much"], "is no percentage"),
        (vec!["exchange", MUFFINS, "leaven", "--time", "soon"], "is no time"),
        (vec!["exchange", MUFFINS, "altitude", "--altitude", "high"], "is no altitude"),
        (vec!["exchange", MUFFINS, "altitude", "--altitude", "10 km"], "where people bake"),
        (vec!["exchange", MUFFINS, "altitude", "--altitude", "9000 m"], "where people bake"),
        (vec!["exchange", KNOTS, "egg-size", "--into", "L", "--count", "none"], "is no count"),
        (vec!["exchange", KNOTS, "butter"], "--stage too"),
        (vec!["exchange", KNOTS, "butter", "--stage", "almond-butter"], "creamed"),
        (vec!["exchange", KNOTS, "--in-place"], "which exchange?"),
        (vec!["exchange", KNOTS, "yeast", "--in-place", "--write", "x.toml"], "cannot be used with"),
    ] {
        let ran = sandbox.run(&words);
        assert_eq!(ran.status, 2, "{words:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{words:?}: {}", ran.err);
    }
}
