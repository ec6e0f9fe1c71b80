//! A core or frying temperature, and no thermometer among the equipment.

use super::{Case, Rule};
use formula::read::{Action, Condition};
use formula::{Diagnostic, Severity};

/// A core or frying temperature, and no thermometer among the equipment.
pub const RULE: Rule = Rule {
    code: "temperature-without-thermometer",
    severity: Severity::Advice,
    page: include_str!("temperature_without_thermometer.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let mut equipment = case.formula.steps().flat_map(|(_, step)| &step.equipment).peekable();
    let has_list = equipment.peek().is_some();
    let reads = |one: &String| ["thermometer", "probe"].iter().any(|word| one.to_lowercase().contains(word));
    if !has_list || equipment.any(reads) {
        return;
    }
    let needs = |step: &formula::Step| {
        matches!(step.until, Some(Condition::Core(_))) || (step.action == Action::Fry && step.temperature.is_some())
    };
    if let Some((_, step)) = case.formula.steps().find(|(_, step)| needs(step)) {
        found.push(
            RULE.at(
                step.place.clone(),
                "a temperature is to be read here, but no equipment of \
             the formula reads one",
            )
            .hint("add a probe or frying thermometer to equipment"),
        );
    }
}
