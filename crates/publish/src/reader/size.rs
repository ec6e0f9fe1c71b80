//! What a reader may scale by: pieces and their weight, the tin, or times.

use crate::tongue::Tongue;
use crate::words::piece_words;
use formula::Formula;
use quantity::{Count, Mass, Volume};
use serde_json::{Value, json};

/// What the main component weighs raw and done, which a way of raising it and a flour may change.
pub fn weighs(formula: &Formula) -> [f64; 2] {
    formula.components.first().map_or([0.0, 0.0], |main| [main.yields.raw().as_grams(), main.yields.done().as_grams()])
}

/// The yield of the main component.
pub fn size(formula: &Formula, tongue: Tongue) -> Value {
    let Some(main) = formula.components.first() else { return Value::Null };
    let yields = &main.yields;
    let pieces = yields.pieces.map(Count::as_pieces);
    json!({
        "pieces": pieces,
        "piece": piece_words(main, tongue),
        "each": yields.scaling_weight.map(Mass::as_grams),
        "left": yields.bake_loss.left().as_ratio(),
        "after": yields.after_scaling.as_grams() / pieces.unwrap_or(1.0),
        "tin": yields.tin.map(|(volume, count)| json!([volume.as_millilitres(), count.as_pieces()])),
    })
}

/// The tin the formula is written for.
pub fn tin(formula: &Formula) -> Option<(Volume, Count)> {
    formula.components.first()?.yields.tin
}
