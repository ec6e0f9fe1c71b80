//! A rule is silenced, and no reason is given.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A rule is silenced, and no reason is given.
pub const RULE: Rule = Rule {
    code: "silenced-without-a-reason",
    severity: Severity::Warning,
    page: include_str!("silenced_without_a_reason.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for quiet in case.formula.quiets.iter().filter(|quiet| quiet.reason.is_empty()) {
        let message = format!("“{}” is silenced without a reason, so it is not", quiet.rule);
        found.push(RULE.at(quiet.place.clone(), message).hint(
            "say why in a few words: the sheet shows them \
             to whoever bakes it",
        ));
    }
}
