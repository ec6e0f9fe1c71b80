//! Pieces are baked, griddled or fried, and how many is not said.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Pieces are baked, griddled or fried, and how many is not said.
pub const RULE: Rule = Rule { code: "yield-missing", severity: Severity::Advice, page: include_str!("yield_missing.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for component in case.formula.components.iter().take(1).filter(|component| case.is_cooked_in_pieces(component)) {
        if component.yields.place.is_none() {
            let message = format!("how much “{}” makes is not said", component.title);
            found.push(RULE.at(component.place.clone(), message).hint(
                "add [component.yield] with pieces, \
                 scaling-weight and serves",
            ));
        }
    }
}
