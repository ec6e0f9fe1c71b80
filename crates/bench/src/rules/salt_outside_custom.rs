//! Salt outside what is customary for the kind of product.

use super::customs::{Figure, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Salt outside what is customary for the kind of product.
pub const RULE: Rule =
    Rule { code: "salt-outside-custom", severity: Severity::Warning, page: include_str!("salt_outside_custom.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        Figure::Salt,
        "check the figure and what it is a share of; if it is meant, silence the \
         rule here and say why",
        found,
    );
}
