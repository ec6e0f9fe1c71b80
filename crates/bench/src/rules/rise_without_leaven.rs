//! A dough is left to rise, and nothing in it would raise it.

use super::stages::Traits;
use super::{Case, Rule};
use formula::read::{Action, StageKind};
use formula::{Diagnostic, Severity};

/// A dough is left to rise, and nothing in it would raise it.
pub const RULE: Rule =
    Rule { code: "rise-without-leaven", severity: Severity::Warning, page: include_str!("rise_without_leaven.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (at, stage) in case.formula.stages() {
        let traits = case.stages.traits(at);
        // A culture may be begun from flour and water alone.
        if stage.kind == StageKind::Levain || traits.has(Traits::LEAVEN) || !traits.has(Traits::FLOUR) {
            continue;
        }
        let rises = |action| matches!(action, Action::Bulk | Action::Proof | Action::Ferment);
        for step in stage.steps.iter().filter(|step| rises(step.action)) {
            let message = format!("“{}” is left to rise, but neither yeast nor culture is in it", stage.title);
            found.push(RULE.at(step.place.clone(), message).hint("add the leaven to the list, or call the step a rest"));
        }
    }
}
