//! What a formula will do in a kitchen: how warm it is mixed, when it is ripe, when it has risen.
//!
//! Every figure is a [`Known`]: what is not stated is assumed and says so, what is computed names its
//! equation, and times carry the band in which an uncalibrated kitchen falls.

mod bowl;
mod calibration;
mod cooking;
mod kitchen;
mod mixing;
mod rise;
mod verdict;

pub use calibration::{BAND, Calibration, Learnt, VIGOUR};
pub use cooking::Cooking;
pub(crate) use cooking::expected_core;
pub use kitchen::Surroundings;
pub use mixing::Mixed;
pub(crate) use mixing::is_mixing;
pub use rise::{Point, Rise};
pub use science::heat::griddle::PROBE;
pub use verdict::{Foreseen, Verdict};

use formula::read::Kitchen;
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
    /// Each griddling and frying.
    pub cookings: Vec<Cooking>,
    /// What cannot be told, and which datum is missing.
    pub missing: Vec<String>,
}

/// A time with its band.
pub type KnownTime = Known<TimeSpan>;

/// Foresees a formula in a kitchen.
#[must_use]
pub fn forecast(formula: &Formula, kitchen: &Kitchen) -> Forecast {
    forecast_in(formula, Surroundings::of(kitchen))
}

/// Foresees a formula in surroundings whose trials may have taught something.
#[must_use]
pub fn forecast_in(formula: &Formula, surroundings: Surroundings) -> Forecast {
    let (rises, mut missing) = risen(formula, &surroundings);
    let mut cookings = Vec::new();
    for (at, step) in formula.steps().filter(|(_, step)| cooking::is_foreseen(step)) {
        let risen =
            rises.iter().rev().find(|rise| rise.at.0 == at.0).and_then(|rise| rise.points.last()).map(|point| point.risen);
        match cooking::cooking(formula, at, step, &surroundings, risen) {
            Ok(cooking) => cookings.push(cooking),
            Err(lacking) => missing.push(lacking),
        }
    }
    Forecast { surroundings, rises, cookings, missing }
}

/// Foresees only what ferments: what questions asked backwards try again and again.
#[must_use]
pub fn rises(formula: &Formula, kitchen: &Kitchen) -> Vec<Rise> {
    rises_in(formula, &Surroundings::of(kitchen))
}

/// Foresees only what ferments, in surroundings whose trials may have taught something.
#[must_use]
pub fn rises_in(formula: &Formula, surroundings: &Surroundings) -> Vec<Rise> {
    risen(formula, surroundings).0
}

fn risen(formula: &Formula, surroundings: &Surroundings) -> (Vec<Rise>, Vec<String>) {
    let mut foreseeing = rise::Foreseeing::new(formula, surroundings);
    for c in 0..formula.components.len() {
        foreseeing.component(c);
    }
    foreseeing.done()
}

/// The middle of a range of times.
fn middle(range: Between<TimeSpan>) -> TimeSpan {
    (range.from + range.to) * 0.5
}

/// The middle of a range of temperatures.
const fn midway(range: Between<Temperature>) -> Temperature {
    Temperature::celsius(f64::midpoint(range.from.as_celsius(), range.to.as_celsius()))
}
