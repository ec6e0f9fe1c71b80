//! How much room a stage takes, in a bowl and in the fridge.

use super::Rise;
use super::bowl::Bowls;
use formula::Formula;
use formula::read::StageKind;
use formula::resolve::formula::StageAt;
use quantity::{Fraction, Mass, Volume};

/// What a bowl may be filled to, so that nothing touches the lid: common practice, no source.
pub const FILLED: Fraction = Fraction::percent(90.0);
/// What tubs take of a shelf, with their walls, lids and the gaps between: common practice, no source.
pub const TUBS: Fraction = Fraction::percent(70.0);

/// The room that a stage takes before any gas is in it, if there is flour in it.
pub fn volume(formula: &Formula, at: StageAt) -> Option<Volume> {
    let stage = formula.stage(at);
    let bowl = Bowls::default().of(formula, at);
    let dough = bowl.dough(stage.kind, false);
    // What the ferment does not know of, such as nuts, takes as much room for its weight as the rest.
    let known =
        bowl.flour + bowl.culture_flour + bowl.water + bowl.milk + bowl.egg + bowl.fat + bowl.sucrose + bowl.hexose + bowl.salt;
    let all = stage.mixed();
    let volume = dough.volume() * (all / known).max(1.0);
    (dough.flour > Mass::ZERO && volume.is_finite()).then_some(volume)
}

/// Cream and its like take twice the room once they are whipped: common practice, no source.
const WHIPPED: f64 = 2.0;

/// How much of a fridge or a proofer a stage takes, with its tub and the gaps about it.
#[must_use]
pub fn fridge_room(formula: &Formula, at: StageAt, rises: &[Rise]) -> Volume {
    bowl_room(formula, at, rises) / TUBS.as_ratio()
}

/// How much the bowl of a stage must hold, so that it can rise in it as high as is foreseen. What is no dough takes a
/// millilitre for each gram, twice that where it is whipped.
#[must_use]
pub fn bowl_room(formula: &Formula, at: StageAt, rises: &[Rise]) -> Volume {
    let heights = rises.iter().filter(|rise| rise.at == at).flat_map(|rise| &rise.points).map(|point| point.risen);
    let most = heights.fold(1.0, f64::max);
    let whipped = if formula.stage(at).kind == StageKind::Creamed { WHIPPED } else { 1.0 };
    let stands = volume(formula, at).unwrap_or_else(|| Volume::millilitres(formula.stage(at).made().as_grams() * whipped));
    stands * (most / FILLED.as_ratio())
}
