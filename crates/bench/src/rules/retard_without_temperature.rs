//! A dough retarded at a temperature that is not stated.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};

/// A dough retarded at a temperature that is not stated.
pub const RULE: Rule = Rule {
    code: "retard-without-temperature",
    severity: Severity::Advice,
    page: include_str!("retard_without_temperature.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps().filter(|(_, step)| step.action == Action::Retard && step.temperature.is_none()) {
        found.push(RULE.at(step.place.clone(), "how cold the dough is retarded is not said").hint(
            "write temperature = \"4 °C\", or what \
             your fridge holds: 4 and 8 °C are hours apart",
        ));
    }
}
