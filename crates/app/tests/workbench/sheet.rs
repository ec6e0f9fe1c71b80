//! The sheet of a formula: what is typed in place, the kitchen by one gesture, remedies by one click.

use crate::browsed::Browsed;

const MUFFINS: &str = "/formula/potato-muffins";

/// What follows the first of some words in a page, so many letters of it.
fn after<'p>(page: &'p str, words: &str) -> &'p str {
    page.split_once(words).map_or("", |(_, rest)| rest.get(..160).unwrap_or(rest))
}

#[test]
fn a_wider_pan_lets_more_steam_go_and_one_that_cannot_be_is_refused() {
    let served = Browsed::demo();
    let steam = |asked: &str| after(&served.page(&format!("{MUFFINS}/parts{asked}")), "glance-steam-0").to_owned();
    let own = steam("");
    assert!(own.contains("by the formula"), "{own}");
    assert_eq!(own, steam("?pan=22"), "the kitchen's own");
    assert_ne!(own, steam("?pan=40"));
    for wrong in ["pan=tiny", "pan=3", "pan=300", "room=warm"] {
        let answer = served.get(&format!("{MUFFINS}/parts?{wrong}"));
        assert_eq!(answer.status, 422, "{wrong}");
    }
}

#[test]
fn a_sentence_is_written_as_it_is_typed() {
    let served = Browsed::demo();
    let page = served.page(MUFFINS);
    assert!(page.contains("Beat {egg-whole} and {sugar-caster} into the lukewarm milk"), "as its author wrote it");
    let sentence = "Stir {yeast-instant} and {flour-strong-white} into {water}.";
    let said = [("gesture", "word"), ("at", "0.0"), ("step", "0"), ("key", "text"), ("amount", sentence)];
    assert_eq!(served.post(&format!("{MUFFINS}/do"), &said).status, 303);
    assert!(served.read("formulas/potato-muffins.toml").contains(sentence));
}

#[test]
fn what_is_weighed_and_named_nowhere_is_named_by_one_click() {
    let served = Browsed::demo();
    let added = [("gesture", "add"), ("at", "0.1"), ("line", "caraway"), ("amount", "12.5 g")];
    assert_eq!(served.post(&format!("{MUFFINS}/do"), &added).status, 303);
    let page = served.page(MUFFINS);
    let field = after(&page, "id=\"g-0-1-caraway\"");
    assert!(field.contains("value=\"12.5\""), "to the digit: {field}");
    let offered = page.split("<button").find(|one| one.contains("data-key=\"ingredient-never-used\"")).expect("a remedy");
    assert!(offered.contains("name it beside “whole milk”"), "{offered}");
    let place = after(offered, "data-amount=\"").split('"').next().unwrap_or_default();
    let mend = [("gesture", "mend"), ("key", "ingredient-never-used"), ("amount", place)];
    assert_eq!(served.post(&format!("{MUFFINS}/do"), &mend).status, 303);
    assert!(served.read("formulas/potato-muffins.toml").contains("{milk-whole: half}, {caraway}"));
    assert!(!served.page(MUFFINS).contains("ingredient-never-used"));
}

#[test]
fn what_trials_taught_stands_when_a_formula_is_changed_after_it_was_baked() {
    let served = Browsed::demo();
    let learnt = served.page("/trials/learnt");
    let said = [("gesture", "amount"), ("at", "0.1"), ("line", "yeast-instant"), ("amount", "8 g")];
    assert_eq!(served.post(&format!("{MUFFINS}/do"), &said).status, 303);
    assert_eq!(served.page("/trials/learnt"), learnt, "the trials were baked by the text before");
}
