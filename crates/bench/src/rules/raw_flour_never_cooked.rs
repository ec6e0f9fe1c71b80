//! Flour goes in raw and is never heated.

use super::stages::Traits;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Flour goes in raw and is never heated.
pub const RULE: Rule =
    Rule { code: "raw-flour-never-cooked", severity: Severity::Warning, page: include_str!("raw_flour_never_cooked.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if case.formula.steps().next().is_none() {
        return;
    }
    for (at, stage) in case.formula.stages() {
        let is_flour = |line: &formula::Line| line.ingredient().is_some_and(|one| Traits::of(one).has(Traits::FLOUR));
        let mut flours = stage.lines.iter().enumerate().filter(|(_, line)| is_flour(line));
        if let Some((_, line)) = flours.find(|(l, _)| !case.stages.is_heated(case.formula, at, *l)) {
            let message = format!("{} of “{}” is not heated in any step; milling kills no germs", line.title, stage.title);
            found.push(RULE.at(line.place.clone(), message).hint(
                "add the step that cooks it; if this is a dough for \
                 other formulas, silence the rule here and say so",
            ));
        }
    }
}
