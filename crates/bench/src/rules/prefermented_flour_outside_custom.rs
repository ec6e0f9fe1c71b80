//! A preferment that holds unusually little or much of the flour.

use super::customs::{Figure, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A preferment that holds unusually little or much of the flour.
pub const RULE: Rule = Rule {
    code: "prefermented-flour-outside-custom",
    severity: Severity::Advice,
    page: include_str!("prefermented_flour_outside_custom.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        Figure::Prefermented,
        "check the size of the preferment; a share outside the range changes \
         acid, strength and time",
        found,
    );
}
