//! A bake loss that no ordinary bread or cake has.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Fraction, print};

/// A bake loss that no ordinary bread or cake has.
pub const RULE: Rule = Rule {
    code: "bake-loss-outside-custom",
    severity: Severity::Warning,
    page: include_str!("bake_loss_outside_custom.md"),
    check,
};

/// What baked and griddled goods lose: common practice, no source.
const USUAL: (Fraction, Fraction) = (Fraction::percent(5.0), Fraction::percent(20.0));

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (c, component) in case.formula.components.iter().enumerate() {
        let loss = component.yields.bake_loss;
        let is_usual = loss >= USUAL.0 && loss <= USUAL.1;
        let is_fried = case.stages.actions_from(case.formula, c).contains(&Action::Fry);
        if is_usual || is_fried || loss == Fraction::ZERO || !case.is_cooked_in_pieces(component) {
            continue;
        }
        let Some(place) = component.yields.place.clone() else { continue };
        let message = format!(
            "the heat is said to drive off {}: baked and griddled goods lose {} to {} (common practice, no source)",
            print::percent(loss, 1),
            print::percent(USUAL.0, 0),
            print::percent(USUAL.1, 0),
        );
        found.push(RULE.at(place, message).hint(
            "weigh a piece raw and cooled: the loss is the difference, as a \
             share of the raw weight",
        ));
    }
}
