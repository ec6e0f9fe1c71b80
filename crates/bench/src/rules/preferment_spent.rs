//! A preferment is left so long that it is too weak or too sour to raise a dough.

use super::case::time;
use super::{Case, Rule};
use crate::forecast::Verdict;
use formula::{Diagnostic, Severity};

/// A preferment is left so long that it is too weak or too sour to raise a dough.
pub const RULE: Rule =
    Rule { code: "preferment-spent", severity: Severity::Warning, page: include_str!("preferment_spent.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let is_spent = |verdict: Verdict| matches!(verdict, Verdict::Spent | Verdict::PastThenSpent);
    for step in case.foreseen().filter(|step| is_spent(step.verdict)) {
        let Some(window) = &step.reached else { continue };
        let message = format!(
            "by the end of its stated time it is foreseen to be spent: ripe from about {} to {}",
            time(window.from.value),
            time(window.to.value)
        );
        found.push(RULE.at(step.place.clone(), message).hint(
            "use it sooner, give it less yeast or culture, or keep it cooler; `wellproved solve` finds the dose for a wanted time",
        ));
    }
}
