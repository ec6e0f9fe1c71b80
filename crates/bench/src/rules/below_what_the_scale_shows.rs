//! An amount of less than two steps of the finest scale in the kitchen.

use super::{Case, Rule};
use formula::read::Amount;
use formula::{Diagnostic, Severity};
use quantity::{Kind, Mass, print};

/// An amount of less than two steps of the finest scale in the kitchen.
pub const RULE: Rule = Rule {
    code: "below-what-the-scale-shows",
    severity: Severity::Advice,
    page: include_str!("below_what_the_scale_shows.md"),
    check,
};

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let Some(scale) = case.kitchen.scales.first() else { return };
    for (_, line) in case.formula.lines() {
        let is_weighed =
            matches!(&line.written, Amount::Measure(measure) if matches!(measure.unit.kind(), Kind::Mass | Kind::Share));
        let wanted = line.mass.value;
        if !is_weighed || wanted <= Mass::ZERO || wanted.as_grams() >= scale.shows.as_grams() * 1.999 {
            continue;
        }
        let message = format!(
            "{} of {} cannot be weighed on “{}”, \
             which shows steps of {}",
            print::mass(wanted),
            line.title,
            scale.title,
            print::mass(scale.shows)
        );
        found.push(RULE.at(line.place.clone(), message).hint(
            "`wellproved sheet` tells a way round: weigh more of it \
             in water and use a part, or make a larger batch",
        ));
    }
}
