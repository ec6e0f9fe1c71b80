//! The face is dark before the middle is done.

use super::{Case, Rule};
use crate::forecast::{Cooking, Surely};
use formula::read::Action;
use formula::{Diagnostic, Severity};

/// The face is dark before the middle is done.
pub const RULE: Rule = Rule {
    code: "pan-too-hot-for-the-thickness",
    severity: Severity::Warning,
    page: include_str!("pan_too_hot_for_the_thickness.md"),
    check,
};

/// A face that differs by this much from the raw crumb is dark: common practice, no source.
const DARK: f64 = 30.0;

/// Whether a pan is too hot for what lies on it; what is not even safe is told by another rule.
pub fn applies(cooking: &Cooking) -> bool {
    let is_raw = cooking.wanted.is_some_and(|wanted| cooking.core_range().to < wanted) || !cooking.is_set();
    let is_safe = cooking.surely() != Surely::NotEnough;
    cooking.action == Action::Griddle && cooking.browning.value.difference.middle() >= DARK && is_raw && is_safe
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for cooking in case.forecast.cookings.iter().filter(|cooking| applies(cooking)) {
        let message = "the faces are foreseen to be dark while the middle is not done".to_owned();
        found.push(RULE.at(cooking.place.clone(), message).hint("a cooler griddle and more time, or thinner pieces"));
    }
}
