//! A time told in the sentence alone, where no timetable finds it.

use super::{Case, Rule};
use formula::read::Attention;
use formula::{Diagnostic, Severity};

/// A time told in the sentence alone, where no timetable finds it.
pub const RULE: Rule =
    Rule { code: "hours-in-words", severity: Severity::Advice, page: include_str!("hours_in_words.md"), check };

const WORDS: [&str; 11] = [
    "for an hour",
    "for half an hour",
    "for a quarter of an hour",
    "for a few minutes",
    "for some minutes",
    "for several minutes",
    "for a couple of",
    "for a few hours",
    "for several hours",
    "leave overnight",
    "rest overnight",
];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, step) in case.formula.steps().filter(|(_, step)| step.time.is_none() && step.attention == Attention::Active) {
        let text = super::case::plain(&step.words);
        let Some(words) = WORDS.into_iter().find(|words| text.contains(words)) else { continue };
        let message = format!("“{words}” stands in the sentence, but the step has no time");
        found.push(RULE.at(step.place.clone(), message).hint(
            "write time = \"30 min\" and {time} in the sentence; if \
             nobody stands by, add attention = \"waiting\"",
        ));
    }
}
