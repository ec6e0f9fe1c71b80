//! A dough divided into pieces without what stays in the bowl and on the bench.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};
use quantity::Fraction;

/// A dough divided into pieces without what stays in the bowl and on the bench.
pub const RULE: Rule =
    Rule { code: "make-up-loss-missing", severity: Severity::Advice, page: include_str!("make_up_loss_missing.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        let component = &case.formula.components[product.component];
        let yields = &component.yields;
        if !case.is_cooked_in_pieces(component) || yields.make_up_loss != Fraction::ZERO {
            continue;
        }
        let Some(place) = yields.place.clone() else { continue };
        let message = format!("nothing of “{}” is said to stay in the bowl or on the bench", component.title);
        found.push(RULE.at(place, message).hint(
            "write make-up-loss = \"2 %\", or what you find: the last piece comes \
             out short otherwise",
        ));
    }
}
