//! An oven hotter than kitchens have.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Temperature, print};

/// An oven hotter than kitchens have.
pub const RULE: Rule =
    Rule { code: "oven-hotter-than-usual", severity: Severity::Warning, page: include_str!("oven_hotter_than_usual.md"), check };

/// What ovens other than wood and stone ovens reach: common practice, no source.
const HOTTEST: Temperature = Temperature::celsius(300.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps().filter(|(_, step)| step.action == Action::Bake) {
        let Some(oven) = step.temperature.filter(|range| range.to > HOTTEST) else { continue };
        let message = format!("an oven at {}: most end at 250 to 300 °C", print::celsius(oven));
        found.push(RULE.at(step.place.clone(), message).hint(
            "if °F was meant, write °F; if it is a wood or stone \
             oven, silence the rule and say so",
        ));
    }
}
