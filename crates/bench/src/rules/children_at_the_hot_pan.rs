//! Children are invited to boiling syrup, hot fat or a hot griddle.

use super::stages::heats;
use super::texts::{Sentence, of_step};
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// Children are invited to boiling syrup, hot fat or a hot griddle.
pub const RULE: Rule = Rule {
    code: "children-at-the-hot-pan",
    severity: Severity::Warning,
    page: include_str!("children_at_the_hot_pan.md"),
    check,
};

const INVITATIONS: [&str; 7] = [
    "let the children",
    "let children",
    "children can",
    "children may",
    "children love to",
    "with the children",
    "ask the children",
];
const HOT: [&str; 8] = ["hot", "boil", "boiling", "fry", "frying", "caramel", "griddle", "oven"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let invites = |sentence: &Sentence| sentence.says(&INVITATIONS) && !sentence.denies();
    let hot = case.formula.steps().filter(|(_, step)| heats(step)).flat_map(|(_, step)| of_step(step));
    let told = case.head.iter().filter(|sentence| sentence.says(&HOT)).cloned();
    for sentence in hot.chain(told).filter(invites) {
        found.push(RULE.at(sentence.place, "children are invited to something hot").hint(
            "give them the kneading, the \
             shaping or the dusting; keep them away from pan and oven",
        ));
    }
}
