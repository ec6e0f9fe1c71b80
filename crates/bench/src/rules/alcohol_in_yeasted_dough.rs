//! So much alcohol in a dough that its yeast is held back.

use super::stages::Traits;
use super::{Case, Rule};
use formula::ingredient::Figure;
use formula::read::StageKind;
use formula::{Diagnostic, Severity};
use quantity::{Fraction, Mass, print};

/// So much alcohol in a dough that its yeast is held back.
pub const RULE: Rule = Rule {
    code: "alcohol-in-yeasted-dough",
    severity: Severity::Warning,
    page: include_str!("alcohol_in_yeasted_dough.md"),
    check,
};

/// The share of alcohol in the liquid above which yeast is clearly held back: common practice, no source.
const MOST: Fraction = Fraction::percent(6.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        let Some(figures) = &product.figures else { continue };
        let water = product.overall.total_flour * figures.true_hydration.value;
        for (s, stage) in case.formula.components[product.component].stages.iter().enumerate() {
            let is_dough = stage.kind == StageKind::FinalMix || stage.kind.is_preferment();
            if !is_dough || !case.stages.traits((product.component, s)).has(Traits::YEAST) {
                continue;
            }
            let strong = stage.lines.iter().filter_map(|line| {
                let share = line.ingredient()?.composition.share(Figure::Alcohol)?;
                (share > Fraction::ZERO).then(|| (line, line.mass.value * share.as_ratio()))
            });
            let strong: Vec<_> = strong.collect();
            let alcohol: Mass = strong.iter().map(|(_, mass)| *mass).sum();
            let of_liquid = Fraction::ratio(alcohol / (water + alcohol));
            let Some((line, _)) = strong.iter().max_by(|a, b| a.1.as_grams().total_cmp(&b.1.as_grams())) else { continue };
            if of_liquid > MOST {
                let message = format!(
                    "{} of alcohol is {} of the dough's liquid; above {} yeast works slowly or stops (common \
                         practice, no source)",
                    print::mass(alcohol),
                    print::percent(of_liquid, 1),
                    print::percent(MOST, 0)
                );
                found.push(RULE.at(line.place.clone(), message).hint(
                    "boil it off first, use less, or soak the fruit \
                     in it and drain well",
                ));
            }
        }
    }
}
