//! The stated time ends long before the stated condition is foreseen.

use super::case::time;
use super::{Case, Rule};
use crate::forecast::Verdict;
use formula::{Diagnostic, Severity};
use quantity::print;

/// The stated time ends long before the stated condition is foreseen.
pub const RULE: Rule = Rule {
    code: "step-shorter-than-its-condition",
    severity: Severity::Warning,
    page: include_str!("step_shorter_than_its_condition.md"),
    check,
};

/// How far beyond the band of an uncalibrated kitchen it must lie: the model's own scatter is no fault of the author.
const BEYOND: f64 = 1.25;

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for step in case.foreseen().filter(|step| step.verdict == Verdict::Later) {
        let (Some(window), Some(stated)) = (&step.reached, step.stated) else { continue };
        let earliest = window.from.band.map_or(window.from.value, |(low, _)| low);
        if earliest.as_minutes() < stated.to.as_minutes() * BEYOND {
            continue;
        }
        let message = format!(
            "the condition is foreseen after about {}, at the earliest {}; the time stated is {}",
            time(window.from.value),
            time(earliest),
            print::time(stated)
        );
        found.push(
            RULE.at(step.place.clone(), message)
                .hint("state a longer time or a warmer place, or give it more leaven: `wellproved forecast` shows the course"),
        );
    }
}
