//! An ingredient that usually carries sulphites, and no word of them.

use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// An ingredient that usually carries sulphites, and no word of them.
pub const RULE: Rule =
    Rule { code: "sulphites-not-mentioned", severity: Severity::Advice, page: include_str!("sulphites_not_mentioned.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if case.head.iter().any(|sentence| ["sulphit", "sulfit"].iter().any(|word| sentence.words.contains(word))) {
        return;
    }
    if let Some((_, line)) = case.formula.lines().find(|(_, line)| line.ingredients().any(|one| one.carries(&["sulphites"]))) {
        let message = format!("{} usually carries sulphites, and no note names them", line.title);
        found.push(RULE.at(line.place.clone(), message).hint(
            "look at the bottle or bag and say so in notes; from 10 \
             mg/kg in the food they are to be named",
        ));
    }
}
