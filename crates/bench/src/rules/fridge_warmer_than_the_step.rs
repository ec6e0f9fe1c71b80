//! A step asks for more cold than the kitchen's fridge gives.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::print;

/// A step asks for more cold than the kitchen's fridge gives.
pub const RULE: Rule = Rule {
    code: "fridge-warmer-than-the-step",
    severity: Severity::Advice,
    page: include_str!("fridge_warmer_than_the_step.md"),
    check,
};

/// A fridge swings by this much, in kelvin, as its door is opened: common practice, no source.
const NEAR: f64 = 1.5;

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let Some(fridge) = case.kitchen.fridge else { return };
    for (_, step) in case.formula.steps().filter(|(_, step)| matches!(step.action, Action::Retard | Action::Chill)) {
        let Some(asked) = step.temperature.filter(|range| range.to.as_celsius() + NEAR < fridge.as_celsius()) else { continue };
        let message = format!(
            "{} is asked for, but the \
             fridge of “{}” holds {}",
            print::celsius(asked),
            case.kitchen.title,
            print::celsius(quantity::Between::just(fridge))
        );
        found.push(RULE.at(step.place.clone(), message).hint(
            "turn the fridge down, or shorten the step: \
             dough moves faster there",
        ));
    }
}
