//! Water outside what is customary for the kind of product.

use super::customs::{Figure, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Water outside what is customary for the kind of product.
pub const RULE: Rule = Rule {
    code: "hydration-outside-custom",
    severity: Severity::Warning,
    page: include_str!("hydration_outside_custom.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        Figure::Hydration,
        "check the liquids; water meant as a share of part of the \
         flour is a common slip",
        found,
    );
}
