//! A yield in pieces that are baked, griddled or fried, without what the heat drives off.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};
use quantity::Fraction;

/// A yield in pieces that are baked, griddled or fried, without what the heat drives off.
pub const RULE: Rule =
    Rule { code: "bake-loss-missing", severity: Severity::Advice, page: include_str!("bake_loss_missing.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for component in case.formula.components.iter().filter(|component| case.is_cooked_in_pieces(component)) {
        let Some(place) = component.yields.place.clone().filter(|_| component.yields.bake_loss == Fraction::ZERO) else {
            continue;
        };
        let message = format!("“{}” is cooked, but nothing is said to be lost by it", component.title);
        found.push(RULE.at(place, message).hint(
            "weigh a piece before and after and write bake-loss = \"11 %\": \
             nutrition, price and labels rest on it",
        ));
    }
}
