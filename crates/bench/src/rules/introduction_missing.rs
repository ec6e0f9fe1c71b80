//! A page without a word on what it is and why one would make it.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A page without a word on what it is and why one would make it.
pub const RULE: Rule =
    Rule { code: "introduction-missing", severity: Severity::Advice, page: include_str!("introduction_missing.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if case.formula.head.intro.trim().is_empty() {
        let place = case.formula.place(&case.formula.head.places.title);
        found.push(RULE.at(place, "there is no introduction").hint(
            "intro = \"…\": two sentences on what it is \
             like and when to begin",
        ));
    }
}
