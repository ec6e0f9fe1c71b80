//! More baking powder or soda than a cake can carry without tasting of it.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};
use quantity::{Fraction, Mass, print};

/// More baking powder or soda than a cake can carry without tasting of it.
pub const RULE: Rule = Rule {
    code: "chemical-leaven-outside-custom",
    severity: Severity::Warning,
    page: include_str!("chemical_leaven_outside_custom.md"),
    check,
};

/// The most of each, as a share of the flour: common practice, no source.
const MOST: [(&str, Fraction); 2] = [("baking-powder", Fraction::percent(8.0)), ("baking-soda", Fraction::percent(2.0))];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        let lines = case.formula.components[product.component].stages.iter().flat_map(|stage| &stage.lines);
        for line in lines {
            let Some(one) = line.ingredient() else { continue };
            let most = MOST.iter().find(|(name, _)| one.is_a(name)).map(|(_, most)| *most);
            let share = Fraction::ratio(line.mass.value / product.overall.total_flour);
            let Some(most) = most.filter(|most| share > *most && line.mass.value > Mass::ZERO) else { continue };
            let message = format!(
                "{} is {} of the flour; over {} it is tasted (common practice, no source)",
                line.title,
                print::percent(share, 1),
                print::percent(most, 0)
            );
            found.push(RULE.at(line.place.clone(), message).hint(
                "baking powder is usually 3 to 6 % of the flour, \
                 soda half to one and a half",
            ));
        }
    }
}
