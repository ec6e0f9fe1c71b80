//! Flour measured by the cup or the spoon.

use super::stages::{is_spooned, written};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};
use quantity::Mass;

/// Flour measured by the cup or the spoon.
pub const RULE: Rule =
    Rule { code: "flour-by-volume", severity: Severity::Advice, page: include_str!("flour_by_volume.md"), check };

/// Less than this is a dusting.
const LITTLE: Mass = Mass::grams(20.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, line) in case.formula.lines().filter(|(_, line)| line.is_flour && is_spooned(line)) {
        if line.mass.value < LITTLE {
            continue;
        }
        let weight = written(line.mass.value);
        let message = format!(
            "{} by volume: a cup scooped or spooned differs by a fifth and more (common \
             practice, no source)",
            line.title
        );
        let found_here = RULE.at(line.place.clone(), message).hint(format!(
            "state the weight, here {weight}: every \
             percentage is a share of it"
        ));
        found.push(found_here.replace_with(format!("write {weight}"), format!("\"{weight}\"")));
    }
}
