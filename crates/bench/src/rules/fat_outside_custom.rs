//! Fat outside what is customary for the kind of product.

use super::customs::{Figure, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Fat outside what is customary for the kind of product.
pub const RULE: Rule =
    Rule { code: "fat-outside-custom", severity: Severity::Advice, page: include_str!("fat_outside_custom.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(case, &RULE, Figure::Fat, "check the fat and what it is a share of", found);
}
