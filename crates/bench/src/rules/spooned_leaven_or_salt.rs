//! Yeast, salt or baking powder measured by the spoon.

use super::stages::{is_spooned, written};
use super::{Case, Rule};
use formula::read::Group;
use formula::{Diagnostic, Severity};

/// Yeast, salt or baking powder measured by the spoon.
pub const RULE: Rule =
    Rule { code: "spooned-leaven-or-salt", severity: Severity::Advice, page: include_str!("spooned_leaven_or_salt.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for (_, line) in case.formula.lines().filter(|(_, line)| is_spooned(line)) {
        let Some(one) = line.ingredient() else { continue };
        if one.leaven.is_none() && one.group != Group::Salt {
            continue;
        }
        let weight = written(line.mass.value);
        let message = format!(
            "{} by the spoon: two people's spoons differ by about 15 % either way (common \
             practice, no source)",
            line.title
        );
        let found_here = RULE.at(line.place.clone(), message).hint(format!(
            "state the weight, here {weight}; a spoon \
             may be told in the note"
        ));
        found.push(found_here.replace_with(format!("write {weight}"), format!("\"{weight}\"")));
    }
}
