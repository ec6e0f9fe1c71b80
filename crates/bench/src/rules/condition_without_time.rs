//! A wait or a heat goes on until something happens, with no word on how long that takes.

use super::{Case, Rule};
use formula::read::Attention;
use formula::{Diagnostic, Severity};

/// A wait or a heat goes on until something happens, with no word on how long that takes.
pub const RULE: Rule =
    Rule { code: "condition-without-time", severity: Severity::Advice, page: include_str!("condition_without_time.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps() {
        let is_long = step.attention == Attention::Waiting || step.action.cooks();
        if is_long && step.until.is_some() && step.time.is_none() && step.side_time.is_none() {
            let message = format!(
                "“{}” goes on until a condition holds, but how long \
                 that takes is not said",
                step.action.word()
            );
            found.push(RULE.at(step.place.clone(), message).hint(
                "add the time you saw it take, as a range: \
                 time = \"60-75 min\"",
            ));
        }
    }
}
