//! The dose of yeast with which a stage is ripe, or has risen, after a given time.

use crate::forecast::{KnownTime, Rise, Surroundings, rises_until};
use formula::resolve::formula::StageAt;
use formula::{Formula, Line};
use quantity::{Between, Fraction, Mass, TimeSpan};
use std::fmt;

/// What should be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum When {
    /// The slow end of the band in which its ripe window opens, for a preferment: a usual kitchen finds it ripe a
    /// little earlier, and the window stays open for hours.
    Ripe(TimeSpan),
    /// The condition of its first rising step, for a dough.
    Risen(TimeSpan),
}

/// A dose that reaches it.
#[derive(Clone, Debug)]
pub struct Dose {
    /// How many times the yeast that the formula states.
    pub factor: f64,
    /// The same for kitchens in which all takes as much longer or shorter as the forecast may be off: as far as a
    /// sensible dose reaches.
    pub band: (f64, f64),
    /// The yeast lines of the stage: name, title, stated, needed, and the needed share of the stage's flour.
    pub lines: Vec<Dosed>,
    /// From when to when it is then ripe, or when it has then risen, from the stretch's beginning.
    pub reached: Between<KnownTime>,
}

/// A line of yeast with what is needed of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Dosed {
    /// Its name in the text.
    pub name: String,
    /// What readers see.
    pub title: String,
    /// What the formula states.
    pub stated: Mass,
    /// What is needed.
    pub needed: Mass,
    /// The same as a share of the stage's flour.
    pub share: Fraction,
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
/// Halvings of the range of doses on a scale of ratios: 2^-20 of it is far below what can be weighed.
const HALVINGS: usize = 20;
/// The same for the dose's band.
const ROUGHLY: usize = 8;

/// Finds the dose for a stage, by its name in the formula's main component or any other.
///
/// # Errors
/// [`NoDose`] when no sensible dose reaches it.
pub fn yeast_for(formula: &Formula, stage: &str, when: When, around: &Surroundings) -> Result<Dose, NoDose> {
    let at = find(formula, stage).ok_or(NoDose::NoYeast)?;
    let search = Search { formula, at, when, around, stated: share(formula, at) };
    let wanted = when.time();
    let factor = search.factor(wanted, HALVINGS)?;
    let dosed = search.dosed(factor);
    let reached = window(&rises_until(&dosed, around, at), at).ok_or(NoDose::NotForeseen)?;
    let (quick, slow) = reached.from.band.map_or((1.0, 1.0), |(low, high)| (low / reached.from.value, high / reached.from.value));
    // Where no sensible dose goes so far, the band ends where sensible doses do.
    let least = search.factor(wanted * slow, ROUGHLY).unwrap_or(LEAST / search.stated);
    let most = search.factor(wanted * quick, ROUGHLY).unwrap_or(MOST / search.stated);
    let stage = dosed.stage(at);
    let lines = stage.lines.iter().filter(|line| is_yeast(line)).map(|line| {
        let needed = line.mass.value;
        Dosed {
            name: line.name.clone(),
            title: line.title.clone(),
            stated: needed / factor,
            needed,
            share: Fraction::ratio(needed / stage.flour),
        }
    });
    Ok(Dose { factor, band: (least.min(factor), most.max(factor)), lines: lines.collect(), reached })
}

/// How many times the dose of a stage as it stands, without its band: half the work.
///
/// # Errors
/// [`NoDose`] when no sensible dose reaches it.
pub fn factor_for(formula: &Formula, stage: &str, when: When, around: &Surroundings) -> Result<f64, NoDose> {
    let at = find(formula, stage).ok_or(NoDose::NoYeast)?;
    Search { formula, at, when, around, stated: share(formula, at) }.factor(when.time(), HALVINGS)
}

/// A dose being sought.
struct Search<'s> {
    formula: &'s Formula,
    at: StageAt,
    when: When,
    around: &'s Surroundings,
    stated: f64,
}

impl Search<'_> {
    /// How many times the stated dose reaches it in that time.
    fn factor(&self, wanted: TimeSpan, halvings: usize) -> Result<f64, NoDose> {
        let (mut low, mut high) = (LEAST / self.stated, MOST / self.stated);
        let quickest = self.takes(high).ok_or(NoDose::NotForeseen)?;
        if quickest > wanted {
            return Err(NoDose::OutOfReach { too_short: true, nearest: quickest });
        }
        // Where the least dose never gets there within the run, it is slow enough.
        if let Some(slowest) = self.takes(low).filter(|slowest| *slowest < wanted) {
            return Err(NoDose::OutOfReach { too_short: false, nearest: slowest });
        }
        for _ in 0..halvings {
            let middle = libm::sqrt(low * high);
            match self.takes(middle) {
                Some(time) if time <= wanted => high = middle,
                _ => low = middle,
            }
        }
        Ok(libm::sqrt(low * high))
    }

    /// How long it takes with so many times the yeast.
    fn takes(&self, factor: f64) -> Option<TimeSpan> {
        let from = window(&rises_until(&self.dosed(factor), self.around, self.at), self.at)?.from;
        Some(self.when.told(&from))
    }

    /// The formula with so many times the yeast in the stage.
    fn dosed(&self, factor: f64) -> Formula {
        let mut changed = self.formula.clone();
        for line in changed.components[self.at.0].stages[self.at.1].lines.iter_mut().filter(|line| is_yeast(line)) {
            line.mass.value = line.mass.value * factor;
        }
        changed
    }
}

impl When {
    /// The time that is wanted.
    pub const fn time(self) -> TimeSpan {
        match self {
            Self::Ripe(time) | Self::Risen(time) => time,
        }
    }

    /// What is meant of a foreseen time: of ripeness the slow end of its band.
    pub fn told(self, from: &KnownTime) -> TimeSpan {
        match self {
            Self::Ripe(_) => from.band.map_or(from.value, |(_, slow)| slow),
            Self::Risen(_) => from.value,
        }
    }
}

/// The stage of that name that has yeast and flour of its own.
pub fn find(formula: &Formula, name: &str) -> Option<StageAt> {
    let mut fitting =
        formula.stages().filter(|(_, stage)| stage.name == name && stage.flour > Mass::ZERO && stage.lines.iter().any(is_yeast));
    fitting.next().map(|(at, _)| at)
}

fn is_yeast(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.yeast().is_some()) && line.mass.value > Mass::ZERO
}

/// The yeast of a stage as a share of its flour.
fn share(formula: &Formula, at: StageAt) -> f64 {
    let stage = formula.stage(at);
    stage.lines.iter().filter(|line| is_yeast(line)).map(|line| line.mass.value / stage.flour).sum()
}

/// From when to when a stage's course reaches what its first told step asks for.
pub fn window(rises: &[Rise], at: StageAt) -> Option<Between<KnownTime>> {
    let rise = rises.iter().find(|rise| rise.at == at)?;
    rise.steps.iter().find_map(|step| step.reached.clone())
}
