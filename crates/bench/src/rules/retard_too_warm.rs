//! A dough retarded so warm that it goes on rising.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Temperature, print};

/// A dough retarded so warm that it goes on rising.
pub const RULE: Rule =
    Rule { code: "retard-too-warm", severity: Severity::Warning, page: include_str!("retard_too_warm.md"), check };

/// The warmest fridge: Food Safety and Hygiene (England) Regulations 2013, schedule 4, for chilled food.
const WARMEST: Temperature = Temperature::celsius(8.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps().filter(|(_, step)| step.action == Action::Retard) {
        let Some(temperature) = step.temperature.filter(|range| range.to > WARMEST) else { continue };
        let message = format!(
            "retarding at {}: above {} the dough goes on rising and chilled \
             food is not kept safely",
            print::celsius(temperature),
            print::celsius(quantity::Between::just(WARMEST))
        );
        found.push(RULE.at(step.place.clone(), message).hint(
            "2 to 6 °C holds a dough; at more than 8 °C call it a \
             slow proof and shorten the time",
        ));
    }
}
