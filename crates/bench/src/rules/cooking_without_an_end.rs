//! Something is baked, griddled or fried for a time, with no sign to tell when it is done.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};

/// Something is baked, griddled or fried for a time, with no sign to tell when it is done.
pub const RULE: Rule =
    Rule { code: "cooking-without-an-end", severity: Severity::Advice, page: include_str!("cooking_without_an_end.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, stage) in case.formula.stages() {
        let last = stage.steps.iter().rfind(|step| matches!(step.action, Action::Bake | Action::Griddle | Action::Fry));
        let Some(step) = last.filter(|step| step.until.is_none() && !super::case::plain(&step.words).contains("until")) else {
            continue;
        };
        let message = format!("“{}” ends by the clock alone", step.action.word());
        found.push(RULE.at(step.place.clone(), message).hint(
            "ovens and pans differ: add until = \"96 °C core\", or \
             what is seen when it is done",
        ));
    }
}
