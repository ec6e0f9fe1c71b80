//! How sure a forecast is: the same formula in many kitchens that differ as kitchens do, and which of the
//! differences the result feels most.

mod blame;
mod cause;
mod kitchens;

pub use blame::blamed;
pub use cause::Cause;

use crate::forecast::{Rise, Surroundings, quick_cores, quick_rises};
use cause::Causes;
use formula::Formula;
use formula::read::Action;
use formula::resolve::formula::StageAt;
use quantity::{Fraction, TimeSpan};
use rayon::prelude::*;
use std::collections::BTreeMap;

/// What many kitchens show of a formula.
#[derive(Debug)]
pub struct Spread {
    /// How many kitchens were tried.
    pub kitchens: usize,
    /// What they show, in working order.
    pub shown: Vec<Shown>,
}

/// One figure over all kitchens.
#[derive(Debug)]
pub struct Shown {
    /// The stage it belongs to.
    pub at: StageAt,
    /// What readers see of it: the title of the stretch.
    pub title: String,
    /// What it is.
    pub what: What,
    /// The middle of all kitchens, in hours, times the volume or degree Celsius.
    pub middle: f64,
    /// From what 5 % stay below to what 5 % go beyond.
    pub band: (f64, f64),
    /// The share of kitchens in which it happens at all.
    pub happens: Fraction,
    /// What the spread comes from, the largest share first.
    pub blame: Vec<(Cause, Fraction)>,
}

/// What a figure is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// When a preferment begins to be ripe, in hours from the beginning of its step.
    RipeFrom,
    /// When it is ripe no more.
    RipeTo,
    /// When a dough reaches its condition, in hours.
    Reached(Action),
    /// How far it has risen at the end of its step, times the volume.
    Risen(Action),
    /// How warm the middle is as it leaves the heat, in degree Celsius.
    Core(Action),
}

/// Which figure of a formula: where, the how-many-eth stretch, step and what.
type Key = (StageAt, usize, What);

/// Cooking costs a hundred times what a rise does, and its band needs fewer kitchens.
const COOKED_EVERY: usize = 10;

/// Tries a formula in so many kitchens; the same seed gives the same answer.
#[must_use]
pub fn spread(formula: &Formula, around: &Surroundings, kitchens: usize, seed: u64) -> Spread {
    let causes = Causes::of(formula, around);
    let tried: Vec<(Vec<f64>, BTreeMap<Key, f64>)> = (0..kitchens)
        .into_par_iter()
        .map(|number| {
            let draw = causes.draw(seed, number);
            let (formula, around) = kitchens::changed(formula, around, &causes, &draw);
            let rises = quick_rises(&formula, &around);
            let mut figures = figures(&rises);
            if number % COOKED_EVERY == 0 {
                let cores = quick_cores(&formula, &around, &rises);
                figures.extend(cores.into_iter().map(|(at, action, core)| ((at, 0, What::Core(action)), core.as_celsius())));
            }
            (draw, figures)
        })
        .collect();
    let usual = quick_rises(formula, around);
    let mut keys: Vec<Key> = tried.iter().flat_map(|(_, figures)| figures.keys().copied()).collect();
    keys.sort_unstable();
    keys.dedup();
    let shown = keys.into_iter().filter_map(|key| shown(key, &tried, &causes, title(formula, &usual, key)));
    Spread { kitchens, shown: shown.collect() }
}

/// The figures of one kitchen.
fn figures(rises: &[Rise]) -> BTreeMap<Key, f64> {
    let mut figures = BTreeMap::new();
    for (number, rise) in rises.iter().enumerate() {
        for step in &rise.steps {
            let mut keep = |what: What, value: f64| {
                if value.is_finite() {
                    figures.insert((rise.at, number, what), value);
                }
            };
            keep(What::Risen(step.action), step.risen.value);
            if let Some(window) = &step.reached {
                let hours = |time: TimeSpan| time.as_hours();
                if window.from == window.to {
                    keep(What::Reached(step.action), hours(window.from.value));
                } else {
                    keep(What::RipeFrom, hours(window.from.value));
                    keep(What::RipeTo, hours(window.to.value));
                }
            }
        }
    }
    figures
}

fn title(formula: &Formula, rises: &[Rise], (at, number, _): Key) -> String {
    rises.get(number).filter(|rise| rise.at == at).map_or_else(|| formula.stage(at).title.clone(), |rise| rise.title.clone())
}

fn shown(key: Key, tried: &[(Vec<f64>, BTreeMap<Key, f64>)], causes: &Causes, title: String) -> Option<Shown> {
    let (at, _, what) = key;
    let every = if matches!(what, What::Core(_)) { COOKED_EVERY } else { 1 };
    let asked = tried.iter().step_by(every);
    let seen: Vec<(&Vec<f64>, f64)> = asked.clone().filter_map(|(draw, figures)| Some((draw, *figures.get(&key)?))).collect();
    let mut values: Vec<f64> = seen.iter().map(|(_, value)| *value).collect();
    values.sort_by(f64::total_cmp);
    let quantile = |share: f64| values.get(((values.len().checked_sub(1)?) as f64 * share).round() as usize).copied();
    Some(Shown {
        at,
        title,
        what,
        middle: quantile(0.5)?,
        band: (quantile(0.05)?, quantile(0.95)?),
        happens: Fraction::ratio(values.len() as f64 / asked.count() as f64),
        blame: causes.named(&blamed(&seen)),
    })
}
