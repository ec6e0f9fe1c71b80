//! A claim of being vegan, beside milk, egg, honey or gelatine.

use super::claims::hold_to;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A claim of being vegan, beside milk, egg, honey or gelatine.
pub const RULE: Rule =
    Rule { code: "vegan-with-animal-food", severity: Severity::Warning, page: include_str!("vegan_with_animal_food.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        &["vegan", "plant-based"],
        |one| one.carries(&["milk", "eggs", "fish"]) || ["honey", "gelatine", "lard"].iter().any(|name| one.holds(name)),
        found,
    );
}
