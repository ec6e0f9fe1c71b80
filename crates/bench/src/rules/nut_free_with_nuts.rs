//! A claim of being free from nuts, beside nuts or peanuts.

use super::claims::{carries, hold_to};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A claim of being free from nuts, beside nuts or peanuts.
pub const RULE: Rule =
    Rule { code: "nut-free-with-nuts", severity: Severity::Warning, page: include_str!("nut_free_with_nuts.md"), check };

const NUTS: [&str; 9] = ["almond", "hazelnut", "walnut", "cashew", "pecan", "brazil-nut", "pistachio", "macadamia", "peanut"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(case, &RULE, &["nut-free", "nut free", "free from nuts", "no-nuts", "no nuts"], |one| carries(one, &NUTS), found);
}
