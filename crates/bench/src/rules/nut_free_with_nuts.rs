//! A claim of being free from nuts, beside nuts or peanuts.

use super::claims::{NUTS, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A claim of being free from nuts, beside nuts or peanuts.
pub const RULE: Rule =
    Rule { code: "nut-free-with-nuts", severity: Severity::Warning, page: include_str!("nut_free_with_nuts.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        &["nut-free", "nut free", "free from nuts", "no-nuts", "no nuts"],
        |one| one.carries(NUTS) || one.carries(&["peanut"]),
        found,
    );
}
