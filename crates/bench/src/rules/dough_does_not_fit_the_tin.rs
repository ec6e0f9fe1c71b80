//! A tin that the risen dough would overflow, or hardly cover.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};
use quantity::{Mass, Volume, print};

/// A tin that the risen dough would overflow, or hardly cover.
pub const RULE: Rule = Rule {
    code: "dough-does-not-fit-the-tin",
    severity: Severity::Warning,
    page: include_str!("dough_does_not_fit_the_tin.md"),
    check,
};

/// The least and most dough for each millilitre of a tin, in gram: common practice, no source.
const LIGHTEST: f64 = 0.25;
/// A close rye loaf fills its tin most.
const HEAVIEST: f64 = 0.85;

fn fill(tin: Volume, grams: f64) -> Mass {
    Mass::grams(tin.as_millilitres() * grams)
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        let yields = &case.formula.components[product.component].yields;
        let (Some((tin, tins)), Some(place), Some(_)) = (yields.tin, &yields.place, product.kind) else { continue };
        let each = yields.raw() / tins.as_pieces();
        let per_millilitre = each.as_grams() / tin.as_millilitres();
        if !per_millilitre.is_finite() || (LIGHTEST..=HEAVIEST).contains(&per_millilitre) {
            continue;
        }
        let what = if per_millilitre > HEAVIEST { "would rise over the rim" } else { "would lie low in it" };
        let (least, most) = (fill(tin, LIGHTEST), fill(tin, HEAVIEST));
        let message = format!(
            "{} of dough in a tin of {} {what}: {} to {} fit (common practice, no source)",
            print::large_mass(each),
            print::volume(tin),
            print::large_mass(least),
            print::large_mass(most),
        );
        found.push(RULE.at(place.clone(), message).hint("change the scaling weight, the tin or the number of tins"));
    }
}
