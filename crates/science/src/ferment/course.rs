//! The course of a fermentation: every state at every time, and when what is reached.

use super::gas_volume::risen;
use super::state::{ACID, GAS_LOST, GAS_MADE, SIZE, TEMPERATURE, YEAST};
use super::temperature_path::Stretch;
use super::{Carried, Organisms, Peak, Stage, State, acidity, ethanol, gas_rate, gas_volume};
use crate::Outside;
use crate::numeric::dormand_prince::{Ending, Step};
use crate::numeric::root;
use quantity::{Acidity, Amount, Mass, Temperature, TimeSpan, Volume};
use std::sync::OnceLock;

/// The course of a fermentation.
#[derive(Debug)]
pub struct Course {
    pub(super) stage: Stage,
    pub(super) organisms: Organisms,
    pub(super) start: State,
    pub(super) steps: Vec<Step<SIZE>>,
    pub(super) stretches: Vec<Stretch>,
    pub(super) last: [f64; SIZE],
    pub(super) outside: Vec<Outside>,
    pub(super) ending: Ending,
    /// Looked for once, since every question of ripeness asks for it.
    pub(super) peak: OnceLock<Option<Peak>>,
}

/// A dough at one time, its amounts a kilogram of its flour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// When, from mixing.
    pub time: TimeSpan,
    /// How warm.
    pub temperature: Temperature,
    /// Volume against that when mixed.
    pub risen: f64,
    /// Volume a kilogram of flour.
    pub volume: Volume,
    /// How sour; within about 0.4.
    pub acidity: Acidity,
    /// Ethanol so far.
    pub ethanol: Mass,
    /// All else.
    pub state: State,
}

impl Course {
    pub(super) fn empty(stage: Stage, organisms: Organisms, start: State) -> Self {
        Self {
            stage,
            organisms,
            start,
            steps: Vec::new(),
            stretches: Vec::new(),
            last: start.numbers(),
            outside: Vec::new(),
            ending: Ending::Complete,
            peak: OnceLock::new(),
        }
    }

    /// Whether it could be followed to its end.
    #[must_use]
    pub const fn ending(&self) -> Ending {
        self.ending
    }

    /// What lies outside the ranges in which the model was held to practice.
    #[must_use]
    pub fn outside(&self) -> &[Outside] {
        &self.outside
    }

    /// The last time it was followed to.
    #[must_use]
    pub fn end(&self) -> TimeSpan {
        TimeSpan::hours(self.last_hour())
    }

    pub(super) fn last_hour(&self) -> f64 {
        self.steps.last().map_or(0.0, Step::end)
    }

    /// The dough at a time, if it was followed so far.
    #[must_use]
    pub fn at(&self, time: TimeSpan) -> Option<Moment> {
        let hour = time.as_hours();
        // A time given in hours may come back a rounding later than the end it names.
        let end = self.last_hour();
        (hour >= 0.0 && hour <= end * (1.0 + 1e-12)).then(|| self.moment(hour.min(end)))
    }

    /// The dough at the end.
    #[must_use]
    pub fn last(&self) -> Moment {
        self.moment(self.last_hour())
    }

    /// The dough at so many times, evenly spread from mixing to the end.
    #[must_use]
    pub fn moments(&self, count: usize) -> Vec<Moment> {
        let gap = self.last_hour() / count.saturating_sub(1).max(1) as f64;
        (0..count).map(|i| self.moment((gap * i as f64).min(self.last_hour()))).collect()
    }

    /// The coldest and the warmest the dough was.
    #[must_use]
    pub fn temperatures(&self) -> (Temperature, Temperature) {
        let ends = self.stretches.iter().flat_map(|stretch| [stretch.from, stretch.to].map(|hour| (stretch, hour)));
        let given = ends.filter_map(|(stretch, hour)| stretch.temperature(hour));
        let own = self.steps.iter().map(|step| self.temperature(step.start, &State::of(step.first())));
        let all = given.chain(own).chain([self.temperature(self.last_hour(), &State::of(&self.last))]);
        all.fold((self.start.temperature, self.start.temperature), |(low, high), t| {
            (if t < low { t } else { low }, if t > high { t } else { high })
        })
    }

    /// When the dough first reaches a volume against that when mixed.
    #[must_use]
    pub fn risen_to(&self, volume: f64) -> Option<TimeSpan> {
        self.crossing(0.0, |hour| self.risen(hour) - volume).map(TimeSpan::hours)
    }

    /// When the dough has doubled.
    #[must_use]
    pub fn doubled(&self) -> Option<TimeSpan> {
        self.risen_to(2.0)
    }

    /// When the dough has risen by half.
    #[must_use]
    pub fn risen_by_half(&self) -> Option<TimeSpan> {
        self.risen_to(1.5)
    }

    /// When that much carbon dioxide a kilogram of flour was made.
    #[must_use]
    pub fn gas_made(&self, amount: Amount) -> Option<TimeSpan> {
        self.crossing(0.0, |hour| self.number(GAS_MADE, hour) - amount.as_moles()).map(TimeSpan::hours)
    }

    /// When the dough is as sour as that.
    #[must_use]
    pub fn soured_to(&self, acidity: Acidity) -> Option<TimeSpan> {
        self.crossing(0.0, |hour| acidity.as_ph() - self.acidity(hour)).map(TimeSpan::hours)
    }

    pub(super) fn risen(&self, hour: f64) -> f64 {
        let held = self.number(GAS_MADE, hour) - self.number(GAS_LOST, hour);
        let given = self.stretch(hour).and_then(|stretch| stretch.temperature(hour));
        let dough = given.unwrap_or_else(|| Temperature::celsius(self.number(TEMPERATURE, hour)));
        risen(held, dough, &self.stage)
    }

    pub(super) fn acidity(&self, hour: f64) -> f64 {
        let acid = self.number(ACID, hour);
        acidity(Amount::millimoles(acid), &self.stage.buffer).as_ph()
    }

    /// The first time from an hour on at which a figure, negative before, is no longer so.
    pub(super) fn crossing(&self, from: f64, figure: impl Fn(f64) -> f64) -> Option<f64> {
        let mut before = from;
        if figure(before) >= 0.0 {
            return Some(before);
        }
        for hour in self.grid().filter(|hour| *hour > from) {
            if figure(hour) >= 0.0 {
                return root::find(&figure, (before, hour), 1e-9);
            }
            before = hour;
        }
        None
    }

    /// Every step, looked at in quarters.
    pub(super) fn grid(&self) -> impl Iterator<Item = f64> {
        self.steps.iter().flat_map(|step| [0.25, 0.5, 0.75, 1.0].map(|part| step.start + part * step.length))
    }

    fn step(&self, hour: f64) -> Option<&Step<SIZE>> {
        self.steps.get(self.steps.partition_point(|step| step.end() < hour))
    }

    fn numbers(&self, hour: f64) -> [f64; SIZE] {
        self.step(hour).map_or(self.last, |step| std::array::from_fn(|state| read(step, state, hour)))
    }

    /// One state alone, since questions of ripeness read it again and again.
    pub(super) fn number(&self, state: usize, hour: f64) -> f64 {
        self.step(hour).map_or(self.last[state], |step| read(step, state, hour))
    }

    fn stretch(&self, hour: f64) -> Option<&Stretch> {
        let place = self.stretches.partition_point(|stretch| stretch.to < hour);
        self.stretches.get(place).or(self.stretches.last())
    }

    fn temperature(&self, hour: f64, state: &State) -> Temperature {
        self.stretch(hour).map_or(state.temperature, |stretch| stretch.temperature_of(hour, state))
    }

    fn moment(&self, hour: f64) -> Moment {
        let numbers = self.numbers(hour);
        let mut state = State::of(&numbers);
        state.temperature = self.temperature(hour, &state);
        let gas = gas_volume(state.gas_held(), state.temperature, &self.stage);
        Moment {
            time: TimeSpan::hours(hour),
            temperature: state.temperature,
            risen: gas.risen,
            volume: gas.volume + self.stage.gas_free_volume,
            acidity: acidity(state.acid, &self.stage.buffer),
            ethanol: ethanol(Amount::moles(numbers[GAS_MADE] - self.start.gas_made.as_moles())),
            state,
        }
    }

    /// What a dough takes over that gets so much of this one's flour at a time. Beating drives the
    /// dissolved gas out; whoever only folds it in sets `gas_kept`.
    #[must_use]
    pub fn carried(&self, time: TimeSpan, flour: Mass) -> Option<Carried> {
        self.at(time).map(|moment| Carried { flour, water: self.stage.water, state: moment.state, gas_kept: 0.0 })
    }

    /// The hours at one temperature in which yeast would have done as much as over the whole course:
    /// ∫ g(T)/g(that) dt, a plain label for a cold plan.
    #[must_use]
    pub fn equivalent(&self, at: Temperature) -> TimeSpan {
        let law = &self.organisms.gas_law;
        let warmth = |hour: f64| gas_rate(self.temperature(hour, &State::of(&self.numbers(hour))), law);
        let simpson = |step: &Step<SIZE>| {
            let (start, end) = (step.start, step.end());
            step.length / 6.0 * (warmth(start) + 4.0 * warmth(0.5 * (start + end)) + warmth(end))
        };
        TimeSpan::hours(self.steps.iter().map(simpson).sum::<f64>() / gas_rate(at, law))
    }

    /// The mass that left as carbon dioxide, a kilogram of flour: what a scale shows.
    #[must_use]
    pub fn mass_lost(&self, time: TimeSpan) -> Option<Mass> {
        self.at(time).map(|moment| Mass::grams(44.01 * moment.state.numbers()[GAS_LOST]))
    }
}

/// A state within a step. What only ever grows is read so: where salt and sugar bring the yeast to a halt its rate
/// has a corner, and the smooth curve across a corner swings.
fn read(step: &Step<SIZE>, state: usize, hour: f64) -> f64 {
    if !matches!(state, YEAST | ACID | GAS_MADE | GAS_LOST) {
        return step.one_at(state, hour);
    }
    let ends = step.ends(state);
    let rise = ends.last - ends.first;
    let bend = ends.leaving / rise;
    if ends.arriving == 0.0 && bend >= 1.0 {
        let left = ((step.end() - hour) / step.length).clamp(0.0, 1.0);
        ends.first + rise * (1.0 - libm::pow(left, bend))
    } else {
        step.one_at(state, hour).max(ends.first.min(ends.last)).min(ends.first.max(ends.last))
    }
}
