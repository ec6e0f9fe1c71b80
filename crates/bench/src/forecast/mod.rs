//! What a formula will do in a kitchen: how warm it is mixed, when it is ripe, when it has risen.
//!
//! Every figure is a [`Known`]: what is not stated is assumed and says so, what is computed names its
//! equation, and times carry the band in which an uncalibrated kitchen falls.

mod bowl;
mod calibration;
mod care;
mod cooking;
mod cream;
mod held;
mod keeping;
mod mixing;
mod nutrition;
mod pot;
mod rise;
mod room_taken;
mod surroundings;
mod verdict;
mod warmed;
mod watch;
mod yielded;

pub use calibration::{BAND, Calibration, Learnt, VIGOUR};
use care::Care;
use cooking::Ends;
pub use cooking::{Browning, Cooking, Heated, Surely};
pub(crate) use cooking::{expected_core, quick_cores};
pub use cream::Cream;
pub(crate) use held::Held;
pub use keeping::Keeping;
pub use mixing::{ByRule, Mixed, is_mixing};
pub use nutrition::{Nutrient, Nutrition, nutrition};
pub use pot::{Pot, Pours, Wanted};
pub(crate) use pot::{boils, poured_at, reached as reached_in_pot};
pub use rise::{Point, Rise};
pub(crate) use room_taken::{FILLED, TUBS, volume};
pub use room_taken::{bowl_room, fridge_room};
pub use science::heat::griddle::PROBE;
pub use surroundings::{Heat, NEAR, Off, Ring, RoomCourse, Stand, Surroundings};
pub use verdict::{Elsewhere, Foreseen, Verdict};
pub use warmed::{HARMS_YEAST, SETS_EGG, Warmed};
pub use yielded::Yielded;

use crate::cost::Cost;
use crate::draws::Spread;
use crate::target::InTime;
use formula::read::Kitchen;
use formula::resolve::formula::StageAt;
use formula::{Formula, Known};
use quantity::{Between, Temperature, TimeSpan};

/// How far an uncalibrated time may be off, as a share: the model's own record against practice.
pub const UNCALIBRATED: f64 = 0.33;

/// What a formula will do.
#[derive(Debug)]
pub struct Forecast {
    /// The kitchen it was foreseen for, assumptions included.
    pub surroundings: Surroundings,
    /// Each stretch in which something ferments, in working order.
    pub rises: Vec<Rise>,
    /// Each griddling, frying and baking.
    pub cookings: Vec<Cooking>,
    /// Each cooked stage that boils.
    pub pots: Vec<Pot>,
    /// Each creamed or stirred stage.
    pub creams: Vec<Cream>,
    /// How each component keeps.
    pub keepings: Vec<Keeping>,
    /// What comes of each component.
    pub yielded: Vec<Yielded>,
    /// What is in each component.
    pub nutrition: Vec<Nutrition>,
    /// What it costs, where the book states prices.
    pub cost: Option<Cost>,
    /// The doses with which preferments that are past their peak would be ripe in their time, where that was asked for.
    pub in_time: Vec<InTime>,
    /// How sure it is, where many kitchens were tried.
    pub spread: Option<Spread>,
    /// What cannot be told, and which datum is missing.
    pub missing: Vec<String>,
}

/// A time with its band.
pub type KnownTime = Known<TimeSpan>;

/// Foresees a formula in a kitchen as its file states it.
#[must_use]
pub fn forecast(formula: &Formula, kitchen: &Kitchen) -> Forecast {
    foresee(formula, &Surroundings::of(kitchen))
}

/// Foresees a formula in these surroundings.
#[must_use]
pub fn foresee(formula: &Formula, surroundings: &Surroundings) -> Forecast {
    foreseen(formula, surroundings, Ends::Both)
}

/// Foresees a formula while somebody types: what the guesses of a cooking leave open follows with [`foresee`].
#[must_use]
pub fn foresee_at_once(formula: &Formula, surroundings: &Surroundings) -> Forecast {
    foreseen(formula, surroundings, Ends::Neither)
}

/// Foresees what rules judge: how warm a middle gets at the most, not how cold it may stay.
pub(crate) fn foresee_for_rules(formula: &Formula, kitchen: &Kitchen) -> Forecast {
    foreseen(formula, &Surroundings::of(kitchen), Ends::Upper)
}

fn foreseen(formula: &Formula, surroundings: &Surroundings, ends: Ends) -> Forecast {
    let (rises, mut missing) = risen(formula, surroundings, Care::Full);
    let (cookings, lacking) = cooking::cookings(formula, surroundings, &rises, ends);
    missing.extend(lacking);
    Forecast {
        surroundings: surroundings.clone(),
        rises,
        cookings,
        pots: pot::pots(formula, surroundings),
        creams: cream::creams(formula, surroundings),
        keepings: keeping::keepings(formula, surroundings),
        yielded: yielded::yielded(formula),
        nutrition: nutrition(formula),
        cost: None,
        in_time: Vec::new(),
        spread: None,
        missing,
    }
}

/// When a stage begins by the clock, counted back from serving; below zero the day before.
pub(crate) fn begins(formula: &Formula, surroundings: &Surroundings, at: StageAt) -> TimeSpan {
    surroundings::Clock::back_from(formula, surroundings.served_at.value).begins(at)
}

/// How warm a stage that does not ferment comes from the bowl; what it is made of is as warm as the room.
pub(crate) fn mixed_cold(formula: &Formula, at: StageAt, surroundings: &Surroundings) -> Mixed {
    mixing::mixed((formula.stage(at), at.1), surroundings, &|_, _| None)
}

/// What a cooked stage holds before it boils.
pub(crate) fn in_the_pot(formula: &Formula, at: StageAt) -> Held {
    held::Products::default().mixed(formula, at)
}

/// Foresees only what ferments up to a stage: what questions asked backwards try again and again.
pub(crate) fn rises_until(formula: &Formula, surroundings: &Surroundings, (c, s): StageAt) -> Vec<Rise> {
    let mut foreseeing = rise::Foreseeing::new(formula, surroundings, Care::Asked);
    for before in 0..c {
        foreseeing.component(before);
    }
    foreseeing.stages(c, s);
    foreseeing.done().0
}

/// Foresees only what ferments.
#[must_use]
pub fn rises(formula: &Formula, surroundings: &Surroundings) -> Vec<Rise> {
    risen(formula, surroundings, Care::Full).0
}

/// The same as closely as a table needs that is read in between: for working it out at many room temperatures.
#[must_use]
pub fn rises_for_a_table(formula: &Formula, surroundings: &Surroundings) -> Vec<Rise> {
    risen(formula, surroundings, Care::Table).0
}

/// The same as closely as kitchens differ: for trying a formula in many of them.
pub(crate) fn quick_rises(formula: &Formula, surroundings: &Surroundings) -> Vec<Rise> {
    risen(formula, surroundings, Care::Quick).0
}

fn risen(formula: &Formula, surroundings: &Surroundings, care: Care) -> (Vec<Rise>, Vec<String>) {
    let mut foreseeing = rise::Foreseeing::new(formula, surroundings, care);
    for c in 0..formula.components.len() {
        foreseeing.component(c);
    }
    foreseeing.done()
}

/// A figure worked out by the ferment's equations.
fn by_the_ferment<T>(value: T) -> Known<T> {
    let source = science::ferment::EQUATIONS.first().map_or("ferment::fermentation", |equation| equation.name);
    Known::computed(value, "the course of the ferment", source)
}

/// The middle of a range of times.
pub(crate) fn middle(range: Between<TimeSpan>) -> TimeSpan {
    (range.from + range.to) * 0.5
}

/// The middle of a range of temperatures.
const fn midway(range: Between<Temperature>) -> Temperature {
    Temperature::celsius(f64::midpoint(range.from.as_celsius(), range.to.as_celsius()))
}
