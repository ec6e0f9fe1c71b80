//! A formula with alcohol is commended for children.

use super::{Case, Rule};
use formula::ingredient::Figure;
use formula::{Diagnostic, Severity};
use quantity::Fraction;

/// A formula with alcohol is commended for children.
pub const RULE: Rule =
    Rule { code: "alcohol-for-children", severity: Severity::Warning, page: include_str!("alcohol_for_children.md"), check };

const CHILDREN: [&str; 7] =
    ["for children", "for the children", "for kids", "children's", "for the whole family", "child-friendly", "kids"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let is_strong = |share: Fraction| share > Fraction::percent(0.5);
    if !case.ingredients().any(|one| one.group != "spice" && one.composition.share(Figure::Alcohol).is_some_and(is_strong)) {
        return;
    }
    for sentence in case.head.iter().filter(|sentence| sentence.says(&CHILDREN) && !sentence.denies()) {
        let warns = sentence.says(&["instead", "in place", "stand in", "leave", "replace"]);
        if !warns {
            found.push(
                RULE.at(
                    sentence.place.clone(),
                    "children are named, but alcohol is in it and \
                 does not all cook off",
                )
                .hint("take the words out, or give the exchange: juice in place of the spirit"),
            );
        }
    }
}
