//! No sensible liquid brings the dough to the temperature that its method wants.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};
use quantity::{Between, Temperature, print};

/// No sensible liquid brings the dough to the temperature that its method wants.
pub const RULE: Rule = Rule {
    code: "dough-temperature-out-of-reach",
    severity: Severity::Advice,
    page: include_str!("dough_temperature_out_of_reach.md"),
    check,
};

/// A liquid colder than this is ice, one hotter harms the yeast that meets it: common practice, no source.
const COLDEST: f64 = 1.0;
const HOTTEST: f64 = 60.0;

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for rise in &case.forecast.rises {
        let Some(mixed) = &rise.mixed else { continue };
        let (Some(wanted), Some((liquid, at))) = (mixed.wanted, &mixed.liquid) else { continue };
        if (COLDEST..=HOTTEST).contains(&at.as_celsius()) {
            continue;
        }
        let whole = |t: Temperature| print::celsius(Between::just(Temperature::celsius(t.as_celsius().round())));
        let message = format!("for a mix at {} the {liquid} would have to be at {}", whole(wanted), whole(*at));
        found.push(
            RULE.at(case.formula.stage(rise.at).place.clone(), message)
                .hint("warm or chill more than the liquid: flour from a cool store, ice for part of the water, a warmer room"),
        );
    }
}
