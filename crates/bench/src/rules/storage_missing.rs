//! A page that does not say how the food keeps.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A page that does not say how the food keeps.
pub const RULE: Rule =
    Rule { code: "storage-missing", severity: Severity::Advice, page: include_str!("storage_missing.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if case.formula.head.storage.as_deref().unwrap_or_default().trim().is_empty() {
        let place = case.formula.place(&case.formula.head.places.title);
        found.push(RULE.at(place, "how it keeps is not said").hint(
            "storage = \"…\": where, how long, and what \
             to do with the rest",
        ));
    }
}
