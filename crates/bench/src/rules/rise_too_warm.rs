//! A dough with yeast left to rise warmer than yeast likes.

use super::stages::Traits;
use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Temperature, print};

/// A dough with yeast left to rise warmer than yeast likes.
pub const RULE: Rule = Rule { code: "rise-too-warm", severity: Severity::Warning, page: include_str!("rise_too_warm.md"), check };

/// Where yeast is past its best: common practice, no source.
const WARMEST: Temperature = Temperature::celsius(38.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, stage) in case.formula.stages().filter(|(at, _)| case.stages.traits(*at).has(Traits::YEAST)) {
        for step in stage.steps.iter().filter(|step| matches!(step.action, Action::Bulk | Action::Proof | Action::Ferment)) {
            let Some(temperature) = step.temperature.filter(|range| range.to > WARMEST) else { continue };
            let message = format!(
                "rising at {}: yeast slackens above {} and dies towards 50 °C (common \
                 practice, no source)",
                print::celsius(temperature),
                print::celsius(quantity::Between::just(WARMEST))
            );
            found.push(RULE.at(step.place.clone(), message).hint("24 to 28 °C suits most doughs; if °F was meant, write °F"));
        }
    }
}
