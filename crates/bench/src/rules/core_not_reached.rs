//! The middle is not foreseen to get as warm as the method wants, even with the best contact.

use super::{Case, Rule, pan_too_hot_for_the_thickness};
use crate::forecast::{Cooking, Surely};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Between, Temperature, TemperatureDifference, print};

/// The middle is not foreseen to get as warm as the method wants, even with the best contact.
pub const RULE: Rule =
    Rule { code: "core-not-reached", severity: Severity::Warning, page: include_str!("core_not_reached.md"), check };

/// The model heats pieces in an oven more slowly than ovens do, by up to this much for small ones: common practice,
/// no source.
const OVEN_SLACK: TemperatureDifference = TemperatureDifference::kelvins(15.0);

fn slack(cooking: &Cooking) -> TemperatureDifference {
    if cooking.action == Action::Bake { OVEN_SLACK } else { TemperatureDifference::default() }
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    // What is not even safe, or too hot outside, is told by rules of its own.
    let is_told_elsewhere =
        |cooking: &Cooking| cooking.surely() == Surely::NotEnough || pan_too_hot_for_the_thickness::applies(cooking);
    let is_only_cool = |cooking: &&Cooking| cooking.is_size_stated && !is_told_elsewhere(cooking);
    for cooking in case.forecast.cookings.iter().filter(is_only_cool) {
        let Some(wanted) = cooking.wanted.filter(|wanted| cooking.core_range().to + slack(cooking) < *wanted) else { continue };
        let whole = |t: Temperature| print::celsius(Between::just(Temperature::celsius(t.as_celsius().round())));
        let message = format!(
            "the middle is foreseen at {} at the most in the stated time; the method wants {}",
            whole(cooking.core_range().to),
            whole(wanted)
        );
        found.push(RULE.at(cooking.place.clone(), message).hint(
            "give it longer, make it thinner, or cook it hotter; a model, not a measurement: probe the middle of one piece",
        ));
    }
}
