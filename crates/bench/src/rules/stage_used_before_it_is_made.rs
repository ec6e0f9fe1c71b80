//! A stage takes up another that stands after it.

use super::{Case, Rule};
use formula::Content;
use formula::{Diagnostic, Severity};

/// A stage takes up another that stands after it.
pub const RULE: Rule = Rule {
    code: "stage-used-before-it-is-made",
    severity: Severity::Warning,
    page: include_str!("stage_used_before_it_is_made.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for ((c, s), stage) in case.formula.stages() {
        for line in &stage.lines {
            let Content::Stage(uc, us) = line.content else { continue };
            if uc != c || us <= s {
                continue;
            }
            let message = format!("“{}” is used here, but it is made further down", line.title);
            found.push(
                RULE.at(line.place.clone(), message).hint("move the stage up: page and timetable follow the order of the text"),
            );
        }
    }
}
