//! Yeast outside what is customary for the kind of product.

use super::customs::{Figure, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Yeast outside what is customary for the kind of product.
pub const RULE: Rule =
    Rule { code: "yeast-outside-custom", severity: Severity::Warning, page: include_str!("yeast_outside_custom.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(case, &RULE, Figure::Yeast, "check the figure and the form of yeast: fresh weighs about three times instant", found);
}
