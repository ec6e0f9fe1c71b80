//! Sugars outside what is customary for the kind of product.

use super::customs::{Figure, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Sugars outside what is customary for the kind of product.
pub const RULE: Rule =
    Rule { code: "sugars-outside-custom", severity: Severity::Advice, page: include_str!("sugars_outside_custom.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(case, &RULE, Figure::Sugars, "check the sugar and what it is a share of; much sugar also slows the yeast", found);
}
