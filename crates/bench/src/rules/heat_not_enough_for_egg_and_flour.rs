//! A piece with raw egg or flour is not foreseen to get hot enough for long enough.

use super::{Case, Rule};
use crate::forecast::{Cooking, Surely};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Temperature, print};

/// A piece with raw egg or flour is not foreseen to get hot enough for long enough.
pub const RULE: Rule = Rule {
    code: "heat-not-enough-for-egg-and-flour",
    severity: Severity::Warning,
    page: include_str!("heat_not_enough_for_egg_and_flour.md"),
    check,
};

/// The model heats small pieces in an oven more slowly than ovens do: only where even its upper bound stays this low
/// is it sure. Common practice, no source.
const SURELY_RAW: Temperature = Temperature::celsius(70.0);

fn may_be_slow(cooking: &Cooking) -> bool {
    cooking.action == Action::Bake && cooking.core_range().to >= SURELY_RAW
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let is_short = |cooking: &&Cooking| cooking.is_size_stated && cooking.surely() == Surely::NotEnough && !may_be_slow(cooking);
    for cooking in case.forecast.cookings.iter().filter(is_short) {
        let message = format!(
            "the heat is foreseen to reduce Salmonella {} times tenfold where it is least; the usual criterion for \
             batters with flour and egg is 5",
            print::number(cooking.reductions.value.to, 1)
        );
        found.push(
            RULE.at(cooking.place.clone(), message).hint(
                "give it longer, make it thinner, or cook it hotter, and probe the middle; guidance only, local rules decide",
            ),
        );
    }
}
