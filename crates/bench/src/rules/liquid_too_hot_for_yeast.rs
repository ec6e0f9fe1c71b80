//! Something hotter than yeast survives goes in together with it.

use super::case::named;
use super::stages::Traits;
use super::{Case, Rule};
use formula::read::Leaven;
use formula::{Content, Line};
use formula::{Diagnostic, Severity};
use quantity::{Temperature, print};

/// Something hotter than yeast survives goes in together with it.
pub const RULE: Rule = Rule {
    code: "liquid-too-hot-for-yeast",
    severity: Severity::Warning,
    page: include_str!("liquid_too_hot_for_yeast.md"),
    check,
};

/// Yeast is harmed from about 50 °C: common practice, no source.
const HOTTEST: Temperature = Temperature::celsius(50.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for ((c, s), stage) in case.formula.stages() {
        let is_alive = |line: &Line| match &line.content {
            Content::Ingredient(one) => one.yeast().is_some() || one.leaven == Some(Leaven::Culture),
            Content::Stage(c, s) => case.stages.traits((*c, *s)).has(Traits::LEAVEN),
            Content::Formula(_) => false,
        };
        for step in &stage.steps {
            if !named(stage, s, &step.words).any(is_alive) {
                continue;
            }
            for line in named(stage, s, &step.words) {
                let Some(temperature) = line.temperature.filter(|range| range.to > HOTTEST && line.ingredient().is_some()) else {
                    continue;
                };
                let message = format!(
                    "{} goes in at {}, together with the yeast of “{}”; above {} yeast dies (common \
                     practice, no source)",
                    line.title,
                    print::celsius(temperature),
                    case.formula.components[c].title,
                    print::celsius(quantity::Between::just(HOTTEST))
                );
                found.push(RULE.at(line.place.clone(), message).hint(
                    "let it cool below 45 °C first, or add it in an \
                     earlier step and let the mix cool",
                ));
            }
        }
    }
}
