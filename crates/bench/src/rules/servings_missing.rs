//! A yield that does not say for how many people.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A yield that does not say for how many people.
pub const RULE: Rule =
    Rule { code: "servings-missing", severity: Severity::Advice, page: include_str!("servings_missing.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for component in case.formula.components.iter().take(1).filter(|component| component.yields.serves.is_none()) {
        if let Some(place) = component.yields.place.clone() {
            found.push(RULE.at(place, "for how many people it is meant is not said").hint(
                "serves = 6: readers shop \
                 by it, and nutrition is told per serving",
            ));
        }
    }
}
