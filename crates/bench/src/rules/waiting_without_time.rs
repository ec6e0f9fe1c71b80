//! Something is left alone, and neither a time nor a condition ends it.

use super::{Case, Rule};
use formula::read::Attention;
use formula::{Diagnostic, Severity};

/// Something is left alone, and neither a time nor a condition ends it.
pub const RULE: Rule =
    Rule { code: "waiting-without-time", severity: Severity::Warning, page: include_str!("waiting_without_time.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps() {
        if step.attention == Attention::Waiting && step.until.is_none() && step.time.is_none() && step.side_time.is_none() {
            let message = format!("“{}” is waited for, but nothing says when it is over", step.action.word());
            found.push(RULE.at(step.place.clone(), message).hint("state time, until, or better both"));
        }
    }
}
