//! A claim of being free from egg, beside egg.

use super::claims::hold_to;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A claim of being free from egg, beside egg.
pub const RULE: Rule =
    Rule { code: "egg-free-with-egg", severity: Severity::Warning, page: include_str!("egg_free_with_egg.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        &["egg-free", "egg free", "free from egg", "free from eggs", "no-egg", "no-eggs", "eggless", "no eggs"],
        |one| one.carries(&["eggs"]),
        found,
    );
}
