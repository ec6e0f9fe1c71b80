//! A raised dough with no salt in it at all.

use super::{Case, Rule};
use formula::ingredient::Figure;
use formula::{Diagnostic, Severity};
use quantity::Fraction;

/// A raised dough with no salt in it at all.
pub const RULE: Rule =
    Rule { code: "dough-without-salt", severity: Severity::Advice, page: include_str!("dough_without_salt.md"), check };

/// An ingredient with more sodium than this, in mg per 100 g, brings its own salt: salted butter, cheese.
const SALTY: f64 = 300.0;

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in case.products.iter().filter(|product| product.kind.is_some()) {
        let salted = |figures: &formula::arithmetic::Figures| figures.salt > Fraction::ZERO;
        let mut ingredients = product.overall.rows.iter().filter_map(|row| row.kind.ingredient());
        let is_salty = ingredients.any(|one| one.composition.get(Figure::Sodium).is_some_and(|sodium| sodium > SALTY));
        if is_salty || product.figures.as_ref().is_none_or(salted) {
            continue;
        }
        let component = &case.formula.components[product.component];
        let message = format!("there is no salt in “{}”", component.title);
        found.push(RULE.at(component.place.clone(), message).hint(
            "most doughs carry 1.5 to 2.2 % of the flour; if \
             none is meant, silence the rule and say why",
        ));
    }
}
