//! A dough left to rise at a temperature that is not stated.

use super::{Case, Rule};
use formula::read::{Action, Condition};
use formula::{Diagnostic, Severity};

/// A dough left to rise at a temperature that is not stated.
pub const RULE: Rule = Rule {
    code: "rise-without-temperature",
    severity: Severity::Advice,
    page: include_str!("rise_without_temperature.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in
        case.formula.steps().filter(|(_, step)| matches!(step.action, Action::Bulk | Action::Proof | Action::Ferment))
    {
        if step.temperature.is_none() && step.until != Some(Condition::Ripe) {
            found.push(
                RULE.at(
                    step.place.clone(),
                    "how warm the dough stands while \
                 it rises is not said",
                )
                .hint("add temperature: a time without it holds in your kitchen only"),
            );
        }
    }
}
