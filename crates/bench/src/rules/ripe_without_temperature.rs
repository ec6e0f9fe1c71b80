//! A preferment left until it is ripe, at a temperature that is not stated.

use super::{Case, Rule};
use formula::read::Condition;
use formula::{Diagnostic, Severity};

/// A preferment left until it is ripe, at a temperature that is not stated.
pub const RULE: Rule = Rule {
    code: "ripe-without-temperature",
    severity: Severity::Advice,
    page: include_str!("ripe_without_temperature.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps() {
        if step.until == Some(Condition::Ripe) && step.temperature.is_none() {
            found.push(
                RULE.at(
                    step.place.clone(),
                    "how warm the preferment stands until it \
                 is ripe is not said",
                )
                .hint("add temperature: two degrees move ripeness by hours"),
            );
        }
    }
}
