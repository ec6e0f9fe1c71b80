//! A cream or custard with milk or egg is held lukewarm for longer than two hours.

use super::stages::Traits;
use super::{Case, Rule};
use formula::read::{Action, StageKind};
use formula::{Diagnostic, Severity};
use quantity::{Temperature, TimeSpan, print};

/// A cream or custard with milk or egg is held lukewarm for longer than two hours.
pub const RULE: Rule = Rule {
    code: "held-neither-hot-nor-cold",
    severity: Severity::Warning,
    page: include_str!("held_neither_hot_nor_cold.md"),
    check,
};

/// Hot enough: US Food Code 2022, 3-501.16.
const HOT: Temperature = Temperature::celsius(57.0);
/// Cold enough: the English 8 °C.
const COLD: Temperature = Temperature::celsius(8.0);
/// What England's food hygiene regulations allow below 63 °C, once.
const MOST: TimeSpan = TimeSpan::hours(2.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (at, stage) in case.formula.stages() {
        let spoils = case.stages.traits(at).has(Traits::MILK.with(Traits::EGG));
        if !spoils || !matches!(stage.kind, StageKind::Creamed | StageKind::Cooked) {
            continue;
        }
        for step in stage.steps.iter().filter(|step| matches!(step.action, Action::Hold | Action::Store)) {
            let (Some(heat), Some(time)) = (step.temperature, step.time) else { continue };
            if heat.from < HOT && heat.to > COLD && time.to > MOST {
                let message = format!(
                    "{} may be held at {} for {}, which is neither hot nor cold",
                    stage.title,
                    print::celsius(heat),
                    print::time(time)
                );
                found.push(
                    RULE.at(step.place.clone(), message)
                        .hint("hold it at 57 °C or more, or in the fridge, or for no more than two hours; local rules decide"),
                );
            }
        }
    }
}
