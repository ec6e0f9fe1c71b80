//! Egg goes in raw and is never heated.

use super::stages::Traits;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Egg goes in raw and is never heated.
pub const RULE: Rule =
    Rule { code: "raw-egg-never-cooked", severity: Severity::Warning, page: include_str!("raw_egg_never_cooked.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if case.formula.steps().next().is_none() {
        return;
    }
    for (at, stage) in case.formula.stages() {
        for (l, line) in stage.lines.iter().enumerate() {
            let is_egg = line.ingredient().is_some_and(|one| Traits::of(one).has(Traits::EGG));
            if is_egg && !case.stages.is_heated(case.formula, at, l) {
                let message = format!("{} of “{}” is not heated in any step", line.title, stage.title);
                found.push(RULE.at(line.place.clone(), message).hint(
                    "cook it to 71 °C, use pasteurised egg, or \
                     silence the rule here and say for whom it is; local rules decide",
                ));
            }
        }
    }
}
