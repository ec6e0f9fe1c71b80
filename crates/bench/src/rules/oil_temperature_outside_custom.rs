//! Frying fat too cool to seal, or so hot that it burns.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Between, Temperature, print};

/// Frying fat too cool to seal, or so hot that it burns.
pub const RULE: Rule = Rule {
    code: "oil-temperature-outside-custom",
    severity: Severity::Warning,
    page: include_str!("oil_temperature_outside_custom.md"),
    check,
};

/// Below it fat soaks in.
const COOLEST: Temperature = Temperature::celsius(160.0);
/// Above it fat begins to burn.
const HOTTEST: Temperature = Temperature::celsius(190.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps().filter(|(_, step)| step.action == Action::Fry) {
        let Some(oil) = step.temperature.filter(|range| range.from < COOLEST || range.to > HOTTEST) else { continue };
        let message = format!(
            "fat at {}: dough is fried at {} (common practice, no source)",
            print::celsius(oil),
            print::celsius(Between { from: COOLEST, to: HOTTEST })
        );
        found.push(RULE.at(step.place.clone(), message).hint(
            "cooler fat soaks in; hotter fat browns before the \
             middle is done, and nears its smoke point",
        ));
    }
}
