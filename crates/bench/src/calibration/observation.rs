//! What a trial saw, one figure at a time, and what a forecast has to say to it.

use super::Logged;
use super::as_done::as_done;
use crate::forecast::{Calibration, Rise, Surroundings, expected_core, rises};
use formula::read::{Action, CookSeen, MixSeen, RiseSeen, StepSeen};
use formula::resolve::formula::StageAt;
use formula::resolve::trial::{cooking_step, step_seen, waiting_step};
use formula::{Formula, Step};
use quantity::{Temperature, TimeSpan};
use science::ferment::{Reading, telling};

/// What was looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// How far it had risen, against the step's beginning.
    Risen,
    /// When it had doubled.
    Doubled,
    /// When it was judged ripe.
    Ripe,
    /// How warm it was as it rose.
    Dough,
    /// How warm it came from the bowl.
    Bowl,
    /// How warm its middle was when it left the heat.
    Core,
}

impl What {
    /// How far a reading may be off: a share of times and volumes, kelvin of temperatures. Judgement: a jar read to
    /// 2 mm, a rise looked at every few minutes, ripeness told by eye, a probe that may miss the middle.
    #[must_use]
    pub const fn error(self) -> f64 {
        match self {
            Self::Risen => 0.06,
            Self::Doubled => 0.08,
            Self::Ripe => 0.2,
            Self::Dough => 0.5,
            Self::Bowl => 0.7,
            Self::Core => 2.0,
        }
    }

    /// Whether it is judged by its ratio, as times and volumes are, and not by its difference.
    #[must_use]
    pub const fn by_ratio(self) -> bool {
        matches!(self, Self::Risen | Self::Doubled | Self::Ripe)
    }

    /// How far off a foreseen figure is, as a logarithm or in kelvin.
    #[must_use]
    pub fn off(self, foreseen: f64, seen: f64) -> f64 {
        if self.by_ratio() { libm::log(foreseen / seen) } else { foreseen - seen }
    }
}

/// One figure that was seen: hours, a share, or degrees Celsius.
#[derive(Clone, Debug, PartialEq)]
pub struct Observation {
    /// What it is.
    pub what: What,
    /// The stage it was seen in.
    pub at: StageAt,
    /// What readers call that stage.
    pub title: String,
    /// The step of that stage.
    pub step: StepSeen,
    /// When, for readings, from the step's beginning.
    pub after: Option<TimeSpan>,
    /// What was seen.
    pub seen: f64,
}

/// All that a trial saw and that can be foreseen; and how many readings tell nothing, since they were taken before a
/// clear rise or past the peak.
#[must_use]
pub fn observations(logged: &Logged) -> (Vec<Observation>, usize) {
    let (mut found, mut untold) = (Vec::new(), 0);
    let formula = logged.formula;
    for mix in &logged.trial.mixes {
        found.extend(from_the_bowl(formula, mix));
    }
    for rise in &logged.trial.rises {
        untold += as_it_rose(formula, rise, &mut found);
    }
    for cook in &logged.trial.cooks {
        found.extend(off_the_heat(formula, cook));
    }
    found.sort_by_key(|one| one.at);
    (found, untold)
}

fn from_the_bowl(formula: &Formula, mix: &MixSeen) -> Option<Observation> {
    let at = mix.of.find(formula)?;
    let seen = mix.temperature?.as_celsius();
    let title = formula.stage(at).title.clone();
    Some(Observation { what: What::Bowl, at, title, step: Action::Mix.into(), after: None, seen })
}

/// Adds what was seen of a rise; gives how many of its readings tell nothing.
fn as_it_rose(formula: &Formula, rise: &RiseSeen, found: &mut Vec<Observation>) -> usize {
    let Some(at) = rise.of.find(formula) else { return 0 };
    let Some(step) = waiting_step(formula, at, rise.step) else { return 0 };
    let stage = formula.stage(at);
    let mut add = |what, after: Option<TimeSpan>, seen: f64| {
        let (title, step) = (stage.title.clone(), step_seen(stage, step));
        found.push(Observation { what, at, title, step, after, seen });
    };
    let risen = rise.risen();
    let readings: Vec<Reading> = risen.iter().map(|(time, risen)| Reading { time: *time, risen: *risen }).collect();
    let told = telling(&readings);
    let later = readings.iter().filter(|reading| reading.time > TimeSpan::ZERO).count();
    told.iter().for_each(|reading| add(What::Risen, Some(reading.time), reading.risen));
    let positive = |time: &Option<TimeSpan>| time.map(TimeSpan::as_hours).filter(|hours| *hours > 0.0);
    if let Some(hours) = positive(&rise.doubled_after) {
        add(What::Doubled, None, hours);
    }
    if let Some(hours) = positive(&rise.ripe_after) {
        add(What::Ripe, None, hours);
    }
    for reading in rise.readings.iter().filter(|reading| reading.after > TimeSpan::ZERO) {
        if let Some(warm) = reading.temperature {
            add(What::Dough, Some(reading.after), warm.as_celsius());
        }
    }
    later.saturating_sub(told.len())
}

fn off_the_heat(formula: &Formula, cook: &CookSeen) -> Option<Observation> {
    let at = cook.of.find(formula)?;
    let stage = formula.stage(at);
    let step = step_seen(stage, cooking_step(formula, at, cook.step)?);
    Some(Observation { what: What::Core, at, title: stage.title.clone(), step, after: None, seen: cook.core?.as_celsius() })
}

/// A trial's bake as it is foreseen.
pub struct Outlook {
    done: Formula,
    around: Surroundings,
    rises: Vec<Rise>,
}

impl Outlook {
    /// Foresees a trial's bake with what is taken to be known.
    #[must_use]
    pub fn of(logged: &Logged, calibration: &Calibration) -> Self {
        let around = Surroundings::of(&logged.kitchen);
        let done = as_done(logged.formula, logged.trial, &around);
        let around = around.as_measured().taught(calibration.clone());
        let rises = rises(&done, &around);
        Self { done, around, rises }
    }

    /// The yeast or culture that raises an observed stage.
    #[must_use]
    pub fn leaven(&self, seen: &Observation) -> Option<&str> {
        self.rise(seen).map(|rise| rise.leaven.as_str())
    }

    /// Whether an observed stage is kneaded, so that friction warms it.
    #[must_use]
    pub fn kneads(&self, seen: &Observation) -> bool {
        self.done.stage(seen.at).steps.iter().any(|step| step.action == Action::Knead)
    }

    /// The waiting step of which something was observed.
    fn waiting(&self, seen: &Observation) -> Option<&Step> {
        waiting_step(&self.done, seen.at, Some(seen.step)).map(|step| &self.done.stage(seen.at).steps[step])
    }

    fn rise(&self, seen: &Observation) -> Option<&Rise> {
        let waiting = self.waiting(seen);
        let is_meant = |rise: &&Rise| match seen.what {
            What::Bowl => rise.mixed.is_some(),
            _ => waiting.is_some_and(|own| rise.steps.iter().any(|step| step.place == own.place)),
        };
        self.rises.iter().filter(|rise| rise.at == seen.at).find(is_meant)
    }

    /// What is foreseen of a figure, if anything; a time that is never reached counts as the end of the run.
    #[must_use]
    pub fn foreseen(&self, seen: &Observation) -> Option<f64> {
        match seen.what {
            What::Core => self.core(seen, &self.around.calibration),
            What::Bowl => self.rise(seen)?.mixed.as_ref().map(|mixed| mixed.computed.value.as_celsius()),
            _ => self.risen(seen),
        }
    }

    /// What is foreseen of a core with another contact of the griddle, which changes no rise.
    #[must_use]
    pub fn core(&self, seen: &Observation, calibration: &Calibration) -> Option<f64> {
        let step = &self.done.stage(seen.at).steps[cooking_step(&self.done, seen.at, Some(seen.step))?];
        let around = self.around.clone().taught(calibration.clone());
        expected_core(&self.done, seen.at, step, &around, &self.rises).map(Temperature::as_celsius)
    }

    fn risen(&self, seen: &Observation) -> Option<f64> {
        let rise = self.rise(seen)?;
        let waiting = self.waiting(seen)?;
        let began = rise.steps.iter().find(|step| step.place == waiting.place)?.lasts.from;
        let course = &rise.course;
        let start = course.at(began)?.risen;
        let hours = |time: TimeSpan| (time - began).as_hours().max(1e-3);
        match seen.what {
            What::Doubled => Some(hours(course.risen_to(2.0 * start).unwrap_or_else(|| course.end()))),
            What::Ripe => {
                let window = course.ripe().map(|window| (window.from, window.to.unwrap_or_else(|| course.end())));
                let (from, to) = window.unwrap_or((course.end(), course.end()));
                Some(hours((from + to) * 0.5))
            }
            What::Risen => Some(course.at(began + seen.after?)?.risen / start),
            _ => Some(course.at(began + seen.after?)?.temperature.as_celsius()),
        }
    }
}
