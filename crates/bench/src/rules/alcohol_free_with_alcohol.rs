//! A claim of being free from alcohol, beside alcohol.

use super::claims::hold_to;
use super::{Case, Rule};
use formula::Ingredient;
use formula::{Diagnostic, Severity};

/// A claim of being free from alcohol, beside alcohol.
pub const RULE: Rule = Rule {
    code: "alcohol-free-with-alcohol",
    severity: Severity::Warning,
    page: include_str!("alcohol_free_with_alcohol.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    hold_to(
        case,
        &RULE,
        &["alcohol-free", "alcohol free", "free from alcohol", "no-alcohol", "no alcohol", "non-alcoholic"],
        Ingredient::is_alcoholic,
        found,
    );
}
