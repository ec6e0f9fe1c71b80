//! A griddle so cool that it dries, or so hot that it burns.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Between, Temperature, print};

/// A griddle so cool that it dries, or so hot that it burns.
pub const RULE: Rule =
    Rule { code: "griddle-outside-custom", severity: Severity::Warning, page: include_str!("griddle_outside_custom.md"), check };

/// Below it cakes dry out before they colour.
const COOLEST: Temperature = Temperature::celsius(110.0);
/// Above it only the thinnest flatbread is cooked before it burns.
const HOTTEST: Temperature = Temperature::celsius(250.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps().filter(|(_, step)| step.action == Action::Griddle) {
        let Some(surface) = step.temperature.filter(|range| range.from < COOLEST || range.to > HOTTEST) else { continue };
        let message = format!(
            "a griddle at {}: griddle cakes are cooked at {} (common practice, no source)",
            print::celsius(surface),
            print::celsius(Between { from: COOLEST, to: HOTTEST })
        );
        found.push(RULE.at(step.place.clone(), message).hint(
            "state the temperature of the surface, as a surface \
             thermometer reads it; the core's goes into until",
        ));
    }
}
