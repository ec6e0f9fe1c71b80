//! A dough rises at a temperature that the kitchen does not have, and nothing provides it.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::print;

/// A dough rises at a temperature that the kitchen does not have, and nothing provides it.
pub const RULE: Rule =
    Rule { code: "rise-far-from-the-room", severity: Severity::Advice, page: include_str!("rise_far_from_the_room.md"), check };

/// Equipment that keeps a dough warmer or cooler than the room.
const PROVIDERS: [&str; 6] = ["proofer", "warm", "incubator", "water bath", "cellar", "wine fridge"];
/// A shelf differs from the room by this much, in kelvin: common practice, no source.
const NEAR: f64 = 4.0;
/// A dough at this or less, in °C, is in the fridge.
const FRIDGE: f64 = 8.0;

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let Some(room) = case.kitchen.room else { return };
    let provides = |one: &String| PROVIDERS.iter().any(|word| one.to_lowercase().contains(word));
    if case.formula.steps().flat_map(|(_, step)| &step.equipment).any(provides) {
        return;
    }
    for (_, step) in
        case.formula.steps().filter(|(_, step)| matches!(step.action, Action::Bulk | Action::Proof | Action::Ferment))
    {
        let is_far = |range: &quantity::Between<quantity::Temperature>| {
            let (from, to) = (range.from.as_celsius(), range.to.as_celsius());
            from > room.as_celsius() + NEAR || (to < room.as_celsius() - NEAR && to > FRIDGE)
        };
        let Some(asked) = step.temperature.filter(is_far) else { continue };
        let message = format!(
            "rising at {}, but “{}” is at {}",
            print::celsius(asked),
            case.kitchen.title,
            print::celsius(quantity::Between::just(room))
        );
        found.push(
            RULE.at(step.place.clone(), message)
                .hint("name in equipment what keeps it there, as a proofer; or state the time at the room's own temperature"),
        );
    }
}
