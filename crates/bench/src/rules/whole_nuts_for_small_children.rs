//! A formula with whole nuts is commended for small children.

use super::texts::all;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// A formula with whole nuts is commended for small children.
pub const RULE: Rule = Rule {
    code: "whole-nuts-for-small-children",
    severity: Severity::Warning,
    page: include_str!("whole_nuts_for_small_children.md"),
    check,
};

const SMALL: [&str; 8] =
    ["babies", "toddler", "toddlers", "small children", "little children", "young children", "little ones", "the little ones"];
/// Words of a sentence that minds it.
const MINDS: [&str; 9] = ["choke", "choking", "grind", "ground", "chop", "chopped", "finely", "under", "instead"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if !case.ingredients().any(|one| one.whole_nut) {
        return;
    }
    for sentence in all(case).into_iter().filter(|sentence| sentence.says(&SMALL)) {
        if !sentence.denies() && !sentence.says(&MINDS) {
            found.push(
                RULE.at(sentence.place, "small children are named, but whole nuts are in it, which they can choke on")
                    .hint("say that the nuts are to be ground or finely chopped for them, or take the words out"),
            );
        }
    }
}
