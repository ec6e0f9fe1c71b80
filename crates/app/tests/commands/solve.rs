//! `solve`: the answers, what is written and what never is, the refusals.

use crate::sandbox::Sandbox;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const KNOTS: &str = "saltmarsh/formulas/cardamom-knots.toml";
const RYE: &str = "saltmarsh/formulas/caraway-rye-tin.toml";

#[test]
fn what_can_be_asked() {
    insta::assert_snapshot!("targets_of_a_formula", Sandbox::with_demo().fine(&["solve", MUFFINS]));
}

/// What dose makes the sponge ready at half past seven.
#[test]
fn a_dose_by_the_clock() {
    let words = ["solve", MUFFINS, "yeast", "--stage", "sponge", "--ripe-at", "07:30", "--begun", "21:00"];
    insta::assert_snapshot!("solve_yeast", Sandbox::with_demo().fine(&words));
}

#[test]
fn what_changes_no_formula() {
    let sandbox = Sandbox::with_demo();
    for (name, words) in [
        ("solve_begin", vec!["begin", "--stage", "sponge", "--ripe-at", "07:30"]),
        ("solve_water", vec!["water", "--stage", "dough", "--to", "25 °C"]),
        ("solve_price", vec!["price", "--to", "2.60 EUR"]),
        ("solve_ice", vec!["water", "--stage", "sponge", "--to", "12 °C", "--room", "27 °C"]),
    ] {
        insta::assert_snapshot!(name, sandbox.fine(&[&["solve", MUFFINS], &words[..]].concat()));
    }
}

/// Several figures at once, and what cannot be met.
#[test]
fn several_figures_at_once() {
    let words = ["solve", KNOTS, "reformulate", "--aim", "true-hydration=62 %", "--aim", "fat=10 %", "--within", "10 %"];
    insta::assert_snapshot!("solve_reformulate", Sandbox::with_demo().fine(&words));
}

/// As other programs get it: the new text is a formula that passes proof-reading.
#[test]
fn the_new_text_is_sound() {
    for (formula, words) in [
        (MUFFINS, vec!["yeast", "--stage", "sponge", "--ripe-after", "14 h"]),
        (MUFFINS, vec!["yeast", "--stage", "dough", "--risen-after", "3 h"]),
        (MUFFINS, vec!["flour", "--stage", "dough", "--to", "10.5 %", "--with", "flour-cake"]),
        (MUFFINS, vec!["syrup", "--to", "70 Brix"]),
        (MUFFINS, vec!["syrup", "--to", "0.3 Pa·s", "--of", "sugar-granulated"]),
        (MUFFINS, vec!["batch", "--to", "50 x 30 x 18 cm"]),
        (KNOTS, vec!["hydration", "--to", "62 %"]),
        (KNOTS, vec!["reformulate", "--aim", "salt=1.7 %", "--aim", "fat=14 %", "--keep", "egg-whole"]),
        (RYE, vec!["hydration", "--to", "82 %"]),
        (RYE, vec!["batch", "--to", "8 l"]),
    ] {
        let sandbox = Sandbox::with_demo();
        let mut all = vec!["solve", formula];
        all.extend(&words);
        all.extend(["--write", "saltmarsh/formulas/new.toml", "--format", "json"]);
        let value: serde_json::Value = serde_json::from_str(&sandbox.fine(&all)).expect("JSON");
        let text = sandbox.read("saltmarsh/formulas/new.toml");
        assert_eq!(value["changed"]["text"].as_str(), Some(text.as_str()), "{words:?}");
        let found = sandbox.run(&["check", "saltmarsh/formulas/new.toml"]);
        assert!(!found.out.contains("error["), "{words:?}\n{}", found.out);
    }
}

#[test]
fn nothing_is_written_unless_asked() {
    let sandbox = Sandbox::with_demo();
    let before = sandbox.read(KNOTS);
    let words = ["solve", KNOTS, "hydration", "--to", "62 %"];
    assert!(sandbox.run(&words).err.contains("nothing is written"));
    assert_eq!(sandbox.read(KNOTS), before);
    let taken = sandbox.run(&[&words[..], &["--write", MUFFINS]].concat());
    assert_eq!((taken.status, taken.err.contains("is there already")), (2, true), "{}", taken.err);
    let kept = sandbox.run(&["solve", KNOTS, "water", "--to", "24 °C", "--in-place"]);
    assert!(kept.err.contains("the formula stays as it is"), "{}", kept.err);
    assert_eq!(sandbox.read(KNOTS), before);
    sandbox.fine(&[&words[..], &["--in-place"]].concat());
    assert!(sandbox.read(KNOTS).contains("water = "));
}

#[test]
fn what_cannot_be() {
    let sandbox = Sandbox::with_demo();
    for (words, reason) in [
        (vec!["solve", MUFFINS, "hydration", "--to", "-5 %", "--stage", "sponge"], "“-5 %” is no percentage"),
        (vec!["solve", MUFFINS, "water", "--to", "24 °C"], "say --stage with one of: sponge, dough"),
        (vec!["solve", "saltmarsh", "yeast"], "which formula?"),
        (vec!["solve", MUFFINS, "yeats"], "did you mean “yeast”?"),
        (vec!["solve", MUFFINS, "yeast", "--stage", "sponge"], "--ripe-after"),
        (vec!["solve", MUFFINS, "yeast", "--stage", "cellar", "--ripe-after", "8 h"], "it has: sponge, dough"),
        (vec!["solve", MUFFINS, "yeast", "--stage", "sponge", "--ripe-after", "soon"], "is no time"),
        (vec!["solve", MUFFINS, "yeast", "--stage", "sponge", "--ripe-at", "25:00"], "is no time of the day"),
        (vec!["solve", MUFFINS, "yeast", "--stage", "sponge", "--ripe-at", "07:30"], "--begun 21:00"),
        (vec!["solve", MUFFINS, "yeast", "--stage", "dough", "--risen-after", "5 min"], "out of reach"),
        (vec!["solve", MUFFINS, "yeast", "--ripe-at", "07:30", "--risen-at", "08:00"], "cannot be used with"),
        (vec!["solve", MUFFINS, "syrup", "--to", "65 Brix", "--of", "honey"], "sugar-granulated"),
        (vec!["solve", KNOTS, "reformulate", "--aim", "salt"], "is no aim"),
        (vec!["solve", KNOTS, "reformulate", "--aim", "taste=9 %"], "hydration, true-hydration"),
        (vec!["solve", KNOTS, "batch", "--to", "big"], "is neither"),
        (vec!["solve", KNOTS, "--in-place"], "which target?"),
    ] {
        let ran = sandbox.run(&words);
        assert_eq!(ran.status, 2, "{words:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{words:?}: {}", ran.err);
    }
}
