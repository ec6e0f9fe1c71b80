//! An oven described in words instead of degrees.

use super::{Case, Rule};
use formula::Step;
use formula::read::Action;
use formula::{Diagnostic, Severity};

/// An oven described in words instead of degrees.
pub const RULE: Rule =
    Rule { code: "oven-heat-in-words", severity: Severity::Advice, page: include_str!("oven_heat_in_words.md"), check };

const WORDS: [&str; 7] = ["hot oven", "moderate oven", "medium oven", "slow oven", "cool oven", "low oven", "gas mark"];

/// The words by which a baking step without a temperature tells its heat.
pub fn in_words(step: &Step) -> Option<&'static str> {
    let is_silent = step.action == Action::Bake && step.temperature.is_none();
    let text = is_silent.then(|| super::case::plain(&step.words))?;
    WORDS.into_iter().find(|words| text.contains(words))
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps() {
        let Some(words) = in_words(step) else { continue };
        let message = format!("“{words}” means something else in every kitchen");
        found.push(RULE.at(step.place.clone(), message).hint("write temperature = \"200 °C\" and {temperature} in the sentence"));
    }
}
