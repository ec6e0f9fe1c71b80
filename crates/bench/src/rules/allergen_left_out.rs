//! A sentence that lists what is contained leaves an allergen out.

use super::claims::{GLUTEN, NUTS};
use super::texts::holds_word;
use super::{Case, Rule};
use formula::ingredient::{Allergen, allergens};
use formula::{Diagnostic, Severity};
use std::collections::BTreeSet;

/// A sentence that lists what is contained leaves an allergen out.
pub const RULE: Rule =
    Rule { code: "allergen-left-out", severity: Severity::Warning, page: include_str!("allergen_left_out.md"), check };

/// Whether a text names an allergen, by its own name or its group's.
fn names(text: &str, allergen: &Allergen) -> bool {
    let title = allergen.title.to_lowercase();
    let group: &[&str] = match allergen.code.as_str() {
        code if code == "oats" || GLUTEN.contains(&code) => &["gluten"],
        "milk" => &["dairy", "butter"],
        "soy" => &["soya", "soy"],
        "peanut" => &["peanuts"],
        code if NUTS.contains(&code) => &["nuts"],
        _ => &[],
    };
    let one = title.trim_end_matches('s');
    [&title, one].into_iter().chain(group.iter().copied()).any(|word| holds_word(text, word))
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let lists: Vec<_> = case.head.iter().filter(|sentence| sentence.words.starts_with("contains ")).collect();
    let text: String = lists.iter().map(|sentence| sentence.words.as_str()).collect();
    // "Contains alcohol" is a note of its own and no list of allergens.
    let Some(first) = lists.iter().find(|list| allergens().iter().any(|one| names(&list.words, one))) else { return };
    let codes: BTreeSet<&str> = case.ingredients().flat_map(|one| &one.allergens).map(String::as_str).collect();
    let missing =
        allergens().iter().filter(|one| codes.contains(one.code.as_str()) && one.code != "sulphites" && !names(&text, one));
    let missing: Vec<&str> = missing.map(|one| one.title.as_str()).collect();
    if !missing.is_empty() {
        let message = format!("what is contained is listed, but not {}", missing.join(", "));
        let hint = "add it, or leave the list to the page, which makes its own from the ingredients";
        found.push(RULE.at(first.place.clone(), message).hint(hint));
    }
}
