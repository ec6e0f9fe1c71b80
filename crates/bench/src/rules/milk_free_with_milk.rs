//! A claim of being free from milk, beside milk.

use super::claims::hold_to;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A claim of being free from milk, beside milk.
pub const RULE: Rule =
    Rule { code: "milk-free-with-milk", severity: Severity::Warning, page: include_str!("milk_free_with_milk.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        &[
            "dairy-free",
            "dairy free",
            "free from dairy",
            "milk-free",
            "milk free",
            "free from milk",
            "no-milk",
            "no-dairy",
            "no dairy",
        ],
        |one| one.carries(&["milk"]),
        found,
    );
}
