//! A cream or custard with milk or egg, and storage that does not name the fridge.

use super::stages::Traits;
use super::{Case, Rule};
use formula::read::StageKind;
use formula::{Diagnostic, Severity};

/// A cream or custard with milk or egg, and storage that does not name the fridge.
pub const RULE: Rule = Rule {
    code: "filling-without-cold-storage",
    severity: Severity::Warning,
    page: include_str!("filling_without_cold_storage.md"),
    check,
};

const COLD: [&str; 8] = ["fridge", "chill", "refrigerat", "freez", "cold", "at once", "straight away", "not keep"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let Some(storage) = &case.formula.head.storage else { return };
    let storage = storage.to_lowercase();
    if COLD.iter().any(|word| storage.contains(word)) {
        return;
    }
    for (c, component) in case.formula.components.iter().enumerate() {
        let Some((s, last)) = component.stages.iter().enumerate().next_back() else { continue };
        let is_filling = matches!(last.kind, StageKind::Creamed | StageKind::Cooked);
        let is_baked = case.stages.users((c, s)).any(|(user, line)| case.stages.is_heated(case.formula, user, line));
        if is_filling && !is_baked && case.stages.traits((c, s)).has(Traits::MILK.with(Traits::EGG)) {
            let message = format!("“{}” holds milk or egg, but nothing says that it is kept cold", component.title);
            let place = case.formula.place(&case.formula.head.places.storage);
            found.push(RULE.at(place, message).hint("say how long it keeps in the fridge, at 5 °C or less; local rules decide"));
            return;
        }
    }
}
