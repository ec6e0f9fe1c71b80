//! The middle is called done at a temperature at which such goods are still raw.

use super::stages::Traits;
use super::{Case, Rule};
use formula::read::{Action, Condition};
use formula::{Diagnostic, Severity};
use quantity::{Between, Temperature, print};

/// The middle is called done at a temperature at which such goods are still raw.
pub const RULE: Rule =
    Rule { code: "core-below-custom", severity: Severity::Warning, page: include_str!("core_below_custom.md"), check };

/// Egg dishes, in °C: after US Food and Drug Administration consumer advice.
const EGG: f64 = 71.0;

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (at, stage) in case.formula.stages() {
        let custom = case.products.iter().find(|product| product.component == at.0).and_then(super::Product::custom);
        let (least, why) = match custom {
            Some(custom) => (custom.core, format!("{} is taken as done from", custom.title)),
            None if case.stages.traits(at).has(Traits::EGG) => (
                EGG,
                "what holds egg is cooked, by \
                 the usual advice, at"
                    .to_owned(),
            ),
            None => continue,
        };
        for step in stage.steps.iter().filter(|step| matches!(step.action, Action::Bake | Action::Griddle | Action::Fry)) {
            let Some(Condition::Core(core)) = &step.until else { continue };
            if core.from.as_celsius() >= least {
                continue;
            }
            let message = format!(
                "done at {} in the middle; {why} {} (common \
                 practice, no source)",
                print::celsius(*core),
                print::celsius(Between::just(Temperature::celsius(least)))
            );
            found.push(RULE.at(step.place.clone(), message).hint("probe the thickest piece, and go by the higher figure"));
        }
    }
}
