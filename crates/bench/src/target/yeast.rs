//! The dose of yeast with which a stage is ripe, or has risen, after a given time.

use crate::forecast::{Forecast, Rise, Surroundings, foresee, rises};
use formula::{Formula, Line};
use quantity::{Fraction, Mass, TimeSpan};
use std::fmt;

/// What should be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum When {
    /// The middle of its ripe window, for a preferment.
    Ripe(TimeSpan),
    /// The condition of its first rising step, for a dough.
    Risen(TimeSpan),
}

/// A dose that reaches it.
#[derive(Debug)]
pub struct Dose {
    /// How many times the yeast that the formula states.
    pub factor: f64,
    /// The yeast lines of the stage: title, stated, needed, and the needed share of the stage's flour.
    pub lines: Vec<(String, Mass, Mass, Fraction)>,
    /// What is then foreseen.
    pub forecast: Forecast,
}

/// Why no dose reaches it.
#[derive(Clone, Debug, PartialEq)]
pub enum NoDose {
    /// There is no stage of that name that ferments by yeast weighed into it.
    NoYeast,
    /// Even the least, or the most, sensible dose misses it: the time it then takes.
    OutOfReach {
        /// Whether the wanted time is shorter than can be had.
        too_short: bool,
        /// What the nearest sensible dose gives.
        nearest: TimeSpan,
    },
    /// The stage states no condition that can be foreseen.
    NotForeseen,
}

impl fmt::Display for NoDose {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoYeast => f.write_str("no stage of that name ferments by yeast weighed into it"),
            Self::NotForeseen => f.write_str("the stage has no fermenting step whose end can be foreseen"),
            Self::OutOfReach { too_short, nearest } => {
                let time = quantity::print::time(quantity::print::rounded_time(quantity::Between::just(*nearest)));
                let dose = if *too_short { "with 5 % of yeast" } else { "with 0.01 % of yeast" };
                write!(f, "that is out of reach: {dose} on its flour it takes about {time}; change the temperature instead")
            }
        }
    }
}

/// Doses of instant yeast on flour beyond which nobody goes: common practice, no source.
const LEAST: f64 = 0.0001;
const MOST: f64 = 0.05;
/// Halvings of the range of doses on a scale of ratios: 2^-24 of it is far below what can be weighed.
const HALVINGS: usize = 24;

/// Finds the dose for a stage, by its name in the formula's main component or any other.
///
/// # Errors
/// [`NoDose`] when no sensible dose reaches it.
pub fn yeast_for(formula: &Formula, stage: &str, when: When, around: &Surroundings) -> Result<Dose, NoDose> {
    let at = find(formula, stage).ok_or(NoDose::NoYeast)?;
    let stated = share(formula, at);
    let reached = |factor: f64| time_of(&rises(&dosed(formula, at, factor), around), at, when).ok_or(NoDose::NotForeseen);
    let wanted = match when {
        When::Ripe(time) | When::Risen(time) => time,
    };
    let (mut low, mut high) = (LEAST / stated, MOST / stated);
    let (slowest, quickest) = (reached(low), reached(high)?);
    if quickest > wanted {
        return Err(NoDose::OutOfReach { too_short: true, nearest: quickest });
    }
    // Where the least dose never gets there within the run, it is slow enough.
    if let Ok(slowest) = slowest
        && slowest < wanted
    {
        return Err(NoDose::OutOfReach { too_short: false, nearest: slowest });
    }
    for _ in 0..HALVINGS {
        let middle = libm::sqrt(low * high);
        match reached(middle) {
            Ok(time) if time <= wanted => high = middle,
            _ => low = middle,
        }
    }
    let factor = libm::sqrt(low * high);
    let formula = dosed(formula, at, factor);
    let stage = &formula.components[at.0].stages[at.1];
    let lines = stage.lines.iter().filter(|line| is_yeast(line)).map(|line| {
        let needed = line.mass.value;
        (line.title.clone(), needed / factor, needed, Fraction::ratio(needed / stage.flour))
    });
    Ok(Dose { factor, lines: lines.collect(), forecast: foresee(&formula, around) })
}

/// The stage of that name that has yeast and flour of its own.
fn find(formula: &Formula, name: &str) -> Option<(usize, usize)> {
    let mut fitting =
        formula.stages().filter(|(_, stage)| stage.name == name && stage.flour > Mass::ZERO && stage.lines.iter().any(is_yeast));
    fitting.next().map(|(at, _)| at)
}

fn is_yeast(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.yeast().is_some()) && line.mass.value > Mass::ZERO
}

/// The yeast of a stage as a share of its flour.
fn share(formula: &Formula, (c, s): (usize, usize)) -> f64 {
    let stage = &formula.components[c].stages[s];
    stage.lines.iter().filter(|line| is_yeast(line)).map(|line| line.mass.value / stage.flour).sum()
}

/// The formula with so many times the yeast in a stage.
fn dosed(formula: &Formula, (c, s): (usize, usize), factor: f64) -> Formula {
    let mut changed = formula.clone();
    for line in changed.components[c].stages[s].lines.iter_mut().filter(|line| is_yeast(line)) {
        line.mass.value = line.mass.value * factor;
    }
    changed
}

/// When a course reaches what is wanted of a stage.
fn time_of(rises: &[Rise], at: (usize, usize), when: When) -> Option<TimeSpan> {
    let rise = rises.iter().find(|rise| rise.at == at)?;
    let window = rise.steps.iter().find_map(|step| step.reached.as_ref())?;
    Some(match when {
        When::Ripe(_) => (window.from.value + window.to.value) * 0.5,
        When::Risen(_) => window.from.value,
    })
}
