//! A formula with alcohol is commended for children.

use super::{Case, Rule};
use formula::read::Group;
use formula::{Diagnostic, Severity};

/// A formula with alcohol is commended for children.
pub const RULE: Rule =
    Rule { code: "alcohol-for-children", severity: Severity::Warning, page: include_str!("alcohol_for_children.md"), check };

const CHILDREN: [&str; 7] =
    ["for children", "for the children", "for kids", "children's", "for the whole family", "child-friendly", "kids"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if !case.ingredients().any(|one| one.group != Group::Spice && one.is_alcoholic()) {
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
