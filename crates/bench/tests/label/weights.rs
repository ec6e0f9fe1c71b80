//! Order of ingredients, added water and stated quantities.

use crate::{baked, drafted};
use bench::label::{Entry, Label, Law};

fn titles(label: &Label) -> Vec<&str> {
    label.list.entries.iter().map(|entry| entry.title.as_str()).collect()
}

fn entry<'l>(label: &'l Label, title: &str) -> &'l Entry {
    label.list.entries.iter().find(|entry| entry.title == title).unwrap_or_else(|| panic!("{title} in {:?}", titles(label)))
}

const BREAD: &str = "flour-bread = \"1000 g\"\nwater = \"650 g\"\nsalt = \"20 g\"\nyeast-instant = \"15 g\"";

/// Regulation (EU) No 1169/2011, Annex VII, Part A: 1685 g in, 1482 g out, so 447 g of water are left, 30.16 %, and
/// stand second.
#[test]
fn water_stands_by_what_the_bread_weighs_more_than_the_rest() {
    let label = drafted(&baked("Loaf", BREAD, 1685.0, 1482.0), "", Law::Eu);
    let water = label.list.water.expect("water was added");
    assert!((water.counted.as_grams() - 447.0).abs() < 1e-3, "{water:?}");
    assert!((water.share.as_percent() - 30.16).abs() < 0.005);
    assert_eq!(titles(&label), ["wheat flour", "water", "salt", "yeast"]);
}

/// American law has no such rule: water is listed by what was put in.
#[test]
fn american_water_is_what_was_put_in() {
    let label = drafted(&baked("Loaf", BREAD, 1685.0, 1482.0), "", Law::Us);
    assert_eq!(label.list.water.expect("water").counted.as_grams(), 650.0);
    // Salt and yeast are 1.35 % and 1.01 % of the loaf: gathered at the end.
    let little: Vec<&str> =
        label.list.entries.iter().filter(|e| e.share <= bench::label::LITTLE).map(|e| e.title.as_str()).collect();
    assert_eq!(little, ["salt", "yeast"]);
}

/// The same: other ingredients 560 g, out 585 g, 25 g or 4.27 % of water may be left out.
#[test]
fn little_water_is_left_out_and_said() {
    let lines = "flour-bread = \"300 g\"\nsugar-caster = \"140 g\"\nbutter-unsalted = \"120 g\"\nwater = \"60 g\"";
    let label = drafted(&baked("Biscuit", lines, 620.0, 585.0), "", Law::Eu);
    let water = label.list.water.expect("water was added");
    assert!((water.share.as_percent() - 4.27).abs() < 0.005, "{water:?}");
    assert!(!water.is_listed && !titles(&label).contains(&"water"));
    assert!(label.open.iter().any(|line| line.contains("4.3")), "{:?}", label.open);
}

/// The same: others 600 g, out 590 g: no water is left, and none is listed.
#[test]
fn water_that_is_baked_out_is_none() {
    let lines = "flour-bread = \"300 g\"\nsugar-caster = \"100 g\"\nbutter-unsalted = \"200 g\"\nwater = \"20 g\"";
    let label = drafted(&baked("Shortbread", lines, 620.0, 590.0), "", Law::Eu);
    assert_eq!(label.list.water.map(|water| water.counted.as_grams()), Some(0.0));
    assert!(!titles(&label).contains(&"water"));
}

/// Where no water was added, what milk leaves is no water of the list.
#[test]
fn milk_is_not_added_water() {
    let label = drafted(&baked("Loaf", "flour-bread = \"500 g\"\nmilk-whole = \"350 g\"", 850.0, 840.0), "", Law::Eu);
    assert!(label.list.water.is_none());
    assert_eq!(titles(&label), ["wheat flour", "whole milk"]);
}

/// Council guidance on stated quantities: 800 g of dough and 200 g of sultanas bake to 800 g, sultanas 25 %, not 20 %.
#[test]
fn sultanas_are_a_quarter() {
    let label = drafted(&baked("Sultana cake", "flour-bread = \"800 g\"\nsultanas = \"200 g\"", 1000.0, 800.0), "", Law::Eu);
    let sultanas = entry(&label, "sultanas");
    assert!(sultanas.is_stated && !entry(&label, "wheat flour").is_stated);
    assert!((sultanas.share.as_percent() - 25.0).abs() < 1e-6);
}

/// Worked by hand from Annex VIII: butter 150 g of a dough of 570 g that bakes to 480 g is 31.25 %; 26.3 % is the share
/// of the raw dough, the wrong figure.
#[test]
fn butter_is_31_25_percent() {
    let lines = "flour-plain-soft = \"250 g\"\nsugar-caster = \"120 g\"\nbutter-unsalted = \"150 g\"\negg-whole = \"50 g\"";
    let label = drafted(&baked("Butter biscuits", lines, 570.0, 480.0), "", Law::Eu);
    let butter = entry(&label, "unsalted butter");
    assert!(butter.is_stated && (butter.share.as_percent() - 31.25).abs() < 1e-6);
    assert_eq!(label.quantities.len(), 1);
}

/// What loses so much that more went in than comes out is stated in gram per 100 g: Commission Notice 2017/C 393/05.
#[test]
fn more_than_the_whole_can_go_in() {
    let label = drafted(&baked("Plum leather", "plums = \"1000 g\"", 1000.0, 250.0), "", Law::Eu);
    assert!((label.list.entries[0].share.as_percent() - 400.0).abs() < 1e-6);
}

/// A topping that is added after baking: its own weight over that of the finished food.
#[test]
fn a_topping_is_not_baked() {
    let text = baked(
        "Almond cake",
        "flour-bread = \"500 g\"\nbutter-unsalted = \"300 g\"\nalmonds = { amount = \"80 g\", after-scaling = true }",
        800.0,
        720.0,
    );
    let label = drafted(&text, "", Law::Eu);
    assert!((label.makes.as_grams() - 800.0).abs() < 1e-3, "{}", label.makes.as_grams());
    assert!((entry(&label, "whole almonds").share.as_percent() - 10.0).abs() < 1e-6);
}

/// Sugars of any kind of sucrose are “sugar”, and stand once.
#[test]
fn sugars_are_one_entry() {
    let lines = "flour-bread = \"500 g\"\nsugar-caster = \"90 g\"\nsugar-granulated = \"60 g\"\nbutter-unsalted = \"100 g\"";
    let label = drafted(&baked("Cake", lines, 750.0, 750.0), "", Law::Eu);
    assert_eq!(titles(&label), ["wheat flour", "sugar", "unsalted butter"]);
    assert_eq!(entry(&label, "sugar").mass.as_grams(), 150.0);
}

/// Stages that lose steam and drips keep their proportions: of 500 g of syrup boiled down and lost in part, sugar and
/// water are what is left of them.
#[test]
fn a_syrup_that_is_used_in_part_is_a_compound() {
    let text = "title = \"Glazed buns\"\n[[component]]\nname = \"syrup\"\n[[component.stage]]\nname = \"syrup\"\nkind = \"cooked\"\n\
        boil-off = \"25 %\"\nloss = \"10 %\"\n[component.stage.ingredients]\nsugar-caster = \"100 g\"\nwater = \"100 g\"\n\
        [[component]]\nname = \"buns\"\n[[component.stage]]\nname = \"buns\"\nkind = \"final-mix\"\n[component.stage.ingredients]\n\
        flour-bread = \"400 g\"\nglaze = { component = \"syrup\", share = \"50 %\" }\n";
    let label = drafted(text, "", Law::Eu);
    assert_eq!(titles(&label), ["wheat flour", "Syrup"]);
    let syrup = entry(&label, "Syrup");
    assert!((syrup.mass.as_grams() - 67.5).abs() < 1e-6);
    let parts: Vec<(&str, f64)> = syrup.parts.entries.iter().map(|e| (e.title.as_str(), e.mass.as_grams())).collect();
    assert_eq!(parts[0].0, "sugar");
    assert!((parts[0].1 - 45.0).abs() < 1e-6 && (parts[1].1 - 22.5).abs() < 1e-6, "{parts:?}");
}
