//! Cinnamon mixed into a dough, where it slows the yeast.

use super::stages::Traits;
use super::{Case, Rule};
use formula::read::StageKind;
use formula::{Diagnostic, Severity};
use quantity::{Fraction, print};

/// Cinnamon mixed into a dough, where it slows the yeast.
pub const RULE: Rule = Rule {
    code: "cinnamon-in-yeasted-dough",
    severity: Severity::Advice,
    page: include_str!("cinnamon_in_yeasted_dough.md"),
    check,
};

/// A pinch does no harm: common practice, no source.
const HARMLESS: Fraction = Fraction::percent(0.25);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        for (s, stage) in case.formula.components[product.component].stages.iter().enumerate() {
            let is_dough = stage.kind == StageKind::FinalMix || stage.kind.is_preferment();
            if !is_dough || !case.stages.traits((product.component, s)).has(Traits::LEAVEN) {
                continue;
            }
            for line in &stage.lines {
                let share = Fraction::ratio(line.mass.value / product.overall.total_flour);
                let is_cinnamon = line.ingredient().is_some_and(|one| one.is_a("cinnamon"));
                if is_cinnamon && share > HARMLESS {
                    let message = format!(
                        "{} of cinnamon, {} of the flour, slows the yeast (common \
                         practice, no source)",
                        print::mass(line.mass.value),
                        print::percent(share, 1)
                    );
                    found.push(RULE.at(line.place.clone(), message).hint(
                        "put it into the filling or the \
                         dusting, or allow more time",
                    ));
                }
            }
        }
    }
}
