//! The steam stated for a syrup does not bring it to the strength that its method wants.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};
use quantity::print;

/// The steam stated for a syrup does not bring it to the strength that its method wants.
pub const RULE: Rule =
    Rule { code: "syrup-misses-its-brix", severity: Severity::Advice, page: include_str!("syrup_misses_its_brix.md"), check };

/// A refractometer reads pectin, acid and other solubles along with the sugars; closer than this is no slip.
const NEAR: f64 = 8.0;

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for pot in &case.forecast.pots {
        let Some(wanted) = &pot.wanted else { continue };
        let (comes, wants) = (pot.brix.1.as_percent(), wanted.brix.as_percent());
        if (comes - wants).abs() < NEAR {
            continue;
        }
        let stage = case.formula.stage(pot.at);
        let message = format!(
            "with the stated boil-off it comes to {} °Brix; the method wants {}",
            print::number(comes, 0),
            print::number(wants, 0)
        );
        let share = wanted.water / stage.mixed();
        let hint = format!("boil-off = \"{} %\" would bring it there", print::number(share * 100.0, 0));
        found.push(RULE.at(stage.place.clone(), message).hint(hint));
    }
}
