//! What is there already and need not be bought.

use super::packs::bought;
use formula::Ingredient;
use formula::larder::weighs;
use formula::read::Larder;
use quantity::{Count, Mass, Measure, SpoonSystem};

/// How much of what is weighed in of an ingredient the larder holds already: without peel, shell and stone, and no more
/// than is weighed in. Where pieces are wanted and pieces are there, they are counted, whatever one weighs.
#[must_use]
pub fn there_already(ingredient: &Ingredient, mass: Mass, pieces: Option<Count>, larder: &Larder) -> Mass {
    let all = bought(ingredient.edible, mass);
    if all <= Mass::ZERO {
        return Mass::ZERO;
    }
    let is_it = |name: &str| name == ingredient.name || ingredient.also.iter().any(|also| also == name);
    let share = |amount: &Measure| match (amount.count(SpoonSystem::Metric), pieces.filter(|pieces| *pieces > Count::ZERO)) {
        (Some(held), Some(pieces)) => Some(held.to / pieces),
        _ => weighs(amount, ingredient, ingredient.edible).map(|held| held / all),
    };
    let held = larder.holds.iter().filter(|(name, _)| is_it(&name.value));
    mass * held.filter_map(|(_, amount)| share(&amount.value)).sum::<f64>().min(1.0)
}
