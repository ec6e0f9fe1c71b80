//! `ingredients`: search, one in full, sources.

use crate::sandbox::Sandbox;

#[test]
fn a_search_lists_what_holds_the_word() {
    insta::assert_snapshot!("ingredients_rye", Sandbox::empty().fine(&["ingredients", "rye"]));
}

#[test]
fn one_in_full_with_its_source() {
    insta::assert_snapshot!("ingredient_in_full", Sandbox::empty().fine(&["ingredients", "semolina-durum"]));
}

#[test]
fn by_the_name_people_type() {
    let out = Sandbox::empty().fine(&["ingredients", "Whole", "Milk", "--format", "json"]);
    let found: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(found[0]["name"], "milk-whole");
    assert_eq!(found[0]["per-100-g"]["water"], 88.13);
}

#[test]
fn the_authors_own_are_found_too() {
    let out = Sandbox::with_demo().fine(&["ingredients", "culture", "--book", "saltmarsh"]);
    assert!(out.contains("rye-culture") || out.contains("Ripe"), "{out}");
}

#[test]
fn datasets_with_licences() {
    let out = Sandbox::empty().fine(&["ingredients", "--sources"]);
    for word in ["USDA", "Ciqual", "Open Government Licence", "Public domain"] {
        assert!(out.contains(word), "{word} is not named:\n{out}");
    }
}

#[test]
fn an_unknown_name_is_told_with_the_nearest() {
    let ran = Sandbox::empty().run(&["ingredients", "buter-unsalted"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("butter-unsalted"), "{}", ran.err);
}

/// The alligation rule: half-way between two proteins is half of each.
#[test]
fn two_flours_blended_to_a_protein() {
    let sandbox = Sandbox::empty();
    // 8.2 % and 11.98 % protein (USDA SR28 20084 and 20083): 10.09 % is half-way.
    let out = sandbox.fine(&["ingredients", "--blend", "flour-cake", "flour-bread", "--to-protein", "10.09 %"]);
    assert!(out.contains("50\u{a0}%") && out.contains("10.09\u{a0}%"), "{out}");
    let ran = sandbox.run(&["ingredients", "--blend", "flour-cake", "flour-bread", "--to-protein", "15 %"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("reach from 8.2"), "{}", ran.err);
}

#[test]
fn only_flours_are_blended() {
    let ran = Sandbox::empty().run(&["ingredients", "--blend", "flour-bread", "milk-whole", "--to-protein", "10 %"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("does not count as flour") && ran.err.to_lowercase().contains("milk"), "{}", ran.err);
}

#[test]
fn without_a_hint_no_line_is_left_for_it() {
    let ran = Sandbox::empty().run(&["ingredients", "zzzzzzzzzzzz"]);
    assert_eq!(ran.status, 2);
    assert_eq!(ran.err.lines().count(), 1, "{:?}", ran.err);
}
