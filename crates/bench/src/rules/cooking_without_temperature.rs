//! Something is baked, griddled or fried at a heat that is not stated.

use super::oven_heat_in_words::in_words;
use super::{Case, Rule};
use formula::read::Action;
use formula::resolve::formula::Word;
use formula::{Diagnostic, Severity};

/// Something is baked, griddled or fried at a heat that is not stated.
pub const RULE: Rule = Rule {
    code: "cooking-without-temperature",
    severity: Severity::Advice,
    page: include_str!("cooking_without_temperature.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, stage) in case.formula.stages() {
        let mut stated = Vec::new();
        for step in stage.steps.iter().filter(|step| matches!(step.action, Action::Bake | Action::Griddle | Action::Fry)) {
            let said = |word: &Word| matches!(word, Word::Measure(measure) if measure.temperature().is_some());
            if step.temperature.is_some() || step.words.iter().any(said) {
                stated.push(step.action);
            } else if !stated.contains(&step.action) && in_words(step).is_none() {
                let message = format!("how hot it is when you “{}” is not said", step.action.word());
                found.push(RULE.at(step.place.clone(), message).hint(
                    "add temperature: of the oven, the fat, or \
                     the griddle's surface",
                ));
            }
        }
    }
}
