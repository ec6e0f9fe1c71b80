//! A book's larder bound to its ingredients.

use crate::read::Larder;
use crate::{Diagnostic, Ingredient, Pantry, fault};
use quantity::{Fraction, Kind, Mass, Measure, SpoonSystem};

/// The file of the larder.
pub const LARDER: &str = "larder.toml";

/// What is wrong with a larder in a book: ingredients that nobody knows, and amounts that cannot be weighed.
pub fn misplaced(larder: &Larder, pantry: &Pantry) -> Vec<Diagnostic> {
    let mut found = Vec::new();
    for (name, amount) in &larder.holds {
        let Some(ingredient) = pantry.find(&name.value) else {
            let message = format!("there is no ingredient called “{}”", name.value);
            let one = fault::UNKNOWN_INGREDIENT.at(name.place(&larder.file), message);
            found.push(match pantry.nearest(&name.value) {
                Some(near) => one.hint(format!("did you mean “{near}”?")),
                None => one.hint("`wellproved ingredients WORD` searches the names"),
            });
            continue;
        };
        if weighs(&amount.value, ingredient, ingredient.edible).is_some() {
            continue;
        }
        let (fault, message) = match amount.value.unit.kind() {
            Kind::Volume => (&fault::NO_DENSITY, format!("the density of {} is not known", ingredient.called)),
            _ => (&fault::NO_PIECE_WEIGHT, format!("what a piece of {} weighs is not known", ingredient.called)),
        };
        found.push(fault.at(amount.place(&larder.file), message).hint("write what it weighs"));
    }
    found
}

/// What an amount of an ingredient weighs as it is bought, with peel, shell and stone, of which that share is edible.
#[must_use]
pub fn weighs(amount: &Measure, ingredient: &Ingredient, edible: Fraction) -> Option<Mass> {
    let spoons = SpoonSystem::Metric;
    match amount.unit.kind() {
        Kind::Mass => amount.mass(spoons).map(|mass| mass.to),
        Kind::Volume => Some(amount.volume(spoons)?.to * ingredient.density.as_ref()?.0),
        _ => {
            let count = amount.count(spoons)?.to;
            // What is bought by the piece is bought with its shell, peel or stone.
            let whole = ingredient.piece.as_ref()?.weighs * (1.0 / edible.as_ratio());
            Some(whole * count.as_pieces())
        }
    }
}
