//! A dough rises after it has been baked, griddled or fried.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};

/// A dough rises after it has been baked, griddled or fried.
pub const RULE: Rule =
    Rule { code: "rise-after-the-oven", severity: Severity::Warning, page: include_str!("rise_after_the_oven.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, stage) in case.formula.stages() {
        let is_cooked = |action| matches!(action, Action::Bake | Action::Griddle | Action::Fry);
        let Some(first) = stage.steps.iter().position(|step| is_cooked(step.action)) else { continue };
        for step in stage.steps.iter().skip(first).filter(|step| matches!(step.action, Action::Bulk | Action::Proof)) {
            let message = format!("“{}” comes after “{}”", step.action.word(), stage.steps[first].action.word());
            found.push(
                RULE.at(step.place.clone(), message)
                    .hint("put the steps in the order in which they are done; what merely stands is a rest"),
            );
        }
    }
}
