//! A formula with honey is commended for babies.

use super::texts::all;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A formula with honey is commended for babies.
pub const RULE: Rule =
    Rule { code: "honey-for-infants", severity: Severity::Warning, page: include_str!("honey_for_infants.md"), check };

const INFANTS: [&str; 8] = ["babies", "infant", "infants", "weaning", "baby-led", "your baby", "for the baby", "for a baby"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if !case.ingredients().any(|one| one.holds("honey")) {
        return;
    }
    for sentence in all(case).into_iter().filter(|sentence| sentence.says(&INFANTS)) {
        let warns = sentence.denies() || sentence.says(&["under", "twelve months", "first birthday", "instead"]);
        if !warns {
            found.push(
                RULE.at(
                    sentence.place,
                    "babies are named, but honey is in it: not before twelve \
                 months, not even baked",
                )
                .hint("take the words out, or exchange the honey for another syrup"),
            );
        }
    }
}
