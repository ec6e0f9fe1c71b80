//! A claim of being free from gluten, beside wheat, rye or barley.

use super::claims::{GLUTEN, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A claim of being free from gluten, beside wheat, rye or barley.
pub const RULE: Rule = Rule {
    code: "gluten-free-with-gluten",
    severity: Severity::Warning,
    page: include_str!("gluten_free_with_gluten.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        &["gluten-free", "gluten free", "free from gluten", "no-gluten", "no gluten", "glutenfree"],
        |one| one.carries(GLUTEN),
        found,
    );
}
