//! `cost`: the costing, what to ask, and what it refuses.

use crate::sandbox::{Sandbox, small_formula};

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const KNOTS: &str = "saltmarsh/formulas/cardamom-knots.toml";

#[test]
fn as_text() {
    insta::assert_snapshot!("cost_as_text", Sandbox::with_demo().fine(&["cost", KNOTS, "--price", "3.20 EUR"]));
}

#[test]
fn as_json() {
    let out = Sandbox::with_demo().fine(&["cost", "saltmarsh", "--format", "json"]);
    let all: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(all.as_array().map(Vec::len), Some(6));
    let decimal = |value: &serde_json::Value| value.as_str().and_then(|text| text.parse::<f64>().ok()).expect("a decimal text");
    for one in all.as_array().expect("a list") {
        let parts: f64 = one["ingredients"].as_array().expect("ingredients").iter().map(|item| decimal(&item["costs"])).sum();
        assert!(parts > 0.0 && parts < decimal(&one["total"]), "{one}");
    }
}

/// A gap is said, never nought: what has no price is named.
#[test]
fn what_has_no_price_is_named() {
    let out = Sandbox::with_demo().fine(&["cost", MUFFINS]);
    assert!(out.contains("Without a price, so the true cost is higher: dried bay leaf, lemon zest."), "{out}");
}

/// The formula that is used is made beforehand: its share of the work is counted, and its heat is told to be missing.
#[test]
fn what_is_made_beforehand_is_counted_or_told() {
    let out = Sandbox::with_demo().fine(&["cost", KNOTS]);
    assert!(out.contains("the heat of Base syrup"), "{out}");
}

#[test]
fn what_cannot_be_reckoned_is_refused() {
    let sandbox = Sandbox::with_demo();
    for (words, told) in [
        (vec!["--food-cost", "0 %"], "has no end"),
        (vec!["--food-cost", "100 %"], "all of it or more"),
        (vec!["--margin", "97 %"], "leave nothing"),
        (vec!["--price", "4.50"], "is not money"),
        (vec!["--price", "4.50 GBP"], "reckons in EUR"),
        (vec!["--price", "0 EUR"], "nobody pays nothing"),
    ] {
        let mut all = vec!["cost", MUFFINS];
        all.extend(&words);
        let ran = sandbox.run(&all);
        assert_eq!(ran.status, 2, "{words:?}");
        assert!(ran.err.contains(told), "{words:?}\n{}", ran.err);
    }
}

#[test]
fn a_book_without_prices_says_how_to_get_them() {
    let sandbox = Sandbox::empty();
    sandbox.write(
        "flat.toml",
        small_formula("flour-bread = \"500 g\"\nwater = \"300 g\"\nsalt = \"10 g\"", "Mix {flour-bread}, {water}, {salt}."),
    );
    let ran = sandbox.run(&["cost", "flat.toml"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("prices.toml"), "{}", ran.err);
}

#[test]
fn prices_that_cannot_be_are_faults() {
    let sandbox = Sandbox::with_demo();
    let prices = sandbox.read("saltmarsh/prices.toml");
    for (wrong, code) in [
        ("margin = \"97 %\"", "loss-over-whole"),
        ("margin = \"100 %\"", "loss-over-whole"),
        ("margin = \"12 g\"", "wrong-quantity"),
    ] {
        sandbox.write("saltmarsh/prices.toml", prices.replace("margin = \"12 %\"", wrong));
        let ran = sandbox.run(&["check", "saltmarsh"]);
        assert!(ran.out.contains(code), "{wrong}\n{}", ran.out);
    }
    sandbox.write("saltmarsh/prices.toml", prices.replace("food-cost = \"28 %\"", "food-cost = \"0 %\""));
    assert!(sandbox.run(&["check", "saltmarsh"]).out.contains("not-an-amount"));
    sandbox.write("saltmarsh/prices.toml", prices.replace("packaging = \"0.11 EUR\"", "packaging = \"0.11 GBP\""));
    assert!(sandbox.run(&["check", "saltmarsh"]).out.contains("two-currencies"));
}

/// A price that was written over is still told, from what was saved.
#[test]
fn what_was_paid_is_told_from_all_that_was_saved() {
    let sandbox = Sandbox::with_demo();
    let asked = ["cost", "saltmarsh", "--formula", "cardamom-knots", "--history"];
    let unsaved = sandbox.run(&asked);
    assert!(unsaved.out.contains("What was paid") && unsaved.err.contains("`wellproved save` remembers them"), "{}", unsaved.err);
    sandbox.fine(&["save", "saltmarsh"]);
    let prices = sandbox.read("saltmarsh/prices.toml");
    let dearer = prices.replace("costs = \"15.60 EUR\"\non = 2026-10-14", "costs = \"16.90 EUR\"\non = 2026-11-20");
    assert_ne!(prices, dearer);
    sandbox.write("saltmarsh/prices.toml", &dearer);
    let told = |words: &[&str]| sandbox.fine(words).replace("\n  ", " ").replace('\u{a0}', " ");
    let paid = told(&asked);
    for line in [
        "10 kg for 15.60 EUR from 2026-10-14 (+5.4 %), 10 kg for 16.90 EUR from 2026-11-20 (+8.3 %); in all +14.2 % since 2026-08-20",
        "• from 2026-11-20: ",
    ] {
        assert!(paid.contains(line), "{line}: {paid}");
    }
    assert!(!told(&asked[..4]).contains("What was paid"), "it is told where it is asked");
    let json = sandbox.fine(&[&asked[..], &["--format", "json"]].concat());
    let json: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(json[0]["paid"][0]["prices"].as_array().map(Vec::len), Some(3));
    assert_eq!(
        told(&["store", "saltmarsh", "gather"]).trim(),
        "Gathered from the saved texts: 31 prices, 101 figures of trials."
    );
    assert_eq!(told(&asked), paid);
}
