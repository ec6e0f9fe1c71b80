//! The steps of all that is made, each with its time, its stations and what it follows.

use super::span::{Span, foreseen_steps, span};
use super::stays::decilitres;
use super::workplace::{DECK, Station, Workplace};
use crate::held::may_be_left_out;
use crate::used::{product_stages, used_formulas};
use bench::forecast::{Rise, Surroundings, fridge_room, rises};
use formula::ingredient::Figure;
use formula::read::{Action, Attention, Condition, StageKind};
use formula::resolve::formula::{StageAt, Word};
use formula::{Formula, Line, Stage, Step};
use quantity::{Fraction, Temperature, TimeSpan};
use std::collections::BTreeSet;
use std::sync::Arc;

/// A formula that is made on the day.
#[derive(Clone, Debug)]
pub struct Dish {
    /// The formula.
    pub formula: Arc<Formula>,
    /// Which of its stages are made.
    pub stages: BTreeSet<StageAt>,
    /// Whether it comes to the table itself; otherwise another formula uses it.
    pub is_served: bool,
    /// What is foreseen of what rises in it.
    pub rises: Arc<[Rise]>,
    /// The stages of which that is foreseen anew from what was seen.
    pub seen: Vec<StageAt>,
    /// Whether it is held and warmed again where its formula says that it may be.
    pub is_held: bool,
}

impl Dish {
    /// Whether a stage is foreseen from what was seen of it, or of the dough that it makes up.
    fn is_seen(&self, at: StageAt) -> bool {
        let makes_up = self.formula.stage(at).kind == StageKind::MakeUp;
        self.seen.iter().any(|seen| seen.0 == at.0 && (seen.1 == at.1 || (makes_up && seen.1 < at.1)))
    }

    /// When a step should have risen by half of what it is to rise by, if it takes so long in all: how long after it has
    /// begun, and by what share of what it was then. None where nothing says how far it rises.
    #[must_use]
    pub fn halfway(&self, job: &Job) -> Option<(TimeSpan, Fraction)> {
        let step = &self.formula.stage(job.at).steps[job.step];
        let Some(Condition::RisenBy(wanted)) = step.until else { return None };
        let rise = self.rises.iter().find(|rise| rise.steps.iter().any(|one| one.place == step.place))?;
        let foreseen = rise.steps.iter().find(|one| one.place == step.place)?;
        let reached = foreseen.reached.as_ref()?.from.value;
        let begin = foreseen.lasts.from;
        let risen = |after: TimeSpan| rise.course.at(begin + after).map(|moment| moment.risen);
        let half = 1.0 + wanted.as_ratio() / 2.0;
        let start = risen(TimeSpan::ZERO)?;
        let hundredth = (1..100).find(|n| risen(reached * (f64::from(*n) / 100.0)).is_some_and(|now| now >= start * half))?;
        Some((job.span.likely * (f64::from(hundredth) / 100.0), wanted * 0.5))
    }
}

/// What is made ready for a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Readies {
    /// The oven is heated.
    Oven,
    /// What should be soft is taken out of the fridge: lines of its stage.
    Soft(Vec<usize>),
}

/// What is done in one go.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// Which dish.
    pub dish: usize,
    /// Which stage of its formula.
    pub at: StageAt,
    /// Which step of the stage.
    pub step: usize,
    /// What it only makes ready for that step, which no formula writes down; none if it is the step itself.
    pub readies: Option<Readies>,
    /// How long it takes.
    pub span: Span,
    /// Whether it needs hands all the time; otherwise only to be set going.
    pub is_work: bool,
    /// What it stands on, in or under, besides hands.
    pub stations: Vec<Station>,
    /// How much of the oven it takes, in hundredths of a deck.
    pub decks: i32,
    /// In how many loads it goes into the oven.
    pub loads: u32,
    /// How much of the proofer it takes, in decilitres; the whole of one whose room is not stated.
    pub warm: i32,
}

impl Job {
    /// How much of a station it needs.
    #[must_use]
    pub fn needs(&self, station: Station) -> i32 {
        match station {
            Station::Hands => i32::from(self.is_work),
            _ if !self.stations.contains(&station) => 0,
            Station::Oven => self.decks,
            Station::Proofer => self.warm,
            _ => 1,
        }
    }

    /// Whether it is the step itself.
    #[must_use]
    pub const fn is_step(&self) -> bool {
        self.readies.is_none()
    }

    /// Whether it is held or stored: until what comes next, however long that is.
    #[must_use]
    pub fn is_held(&self, dishes: &[Dish]) -> bool {
        let action = dishes[self.dish].formula.stage(self.at).steps[self.step].action;
        matches!(action, Action::Hold | Action::Store) && self.is_step()
    }

    /// Whether nobody may sleep or leave while it goes on.
    #[must_use]
    pub fn wants_somebody(&self) -> bool {
        self.is_work || self.stations.iter().any(|station| station.is_hot())
    }
}

/// How long a cold oven takes to be hot all through: common practice, no source.
const OVEN_HEATS: TimeSpan = TimeSpan::minutes(30.0);
/// How long butter takes to be soft in a room: common practice, no source.
const SOFTENS: TimeSpan = TimeSpan::hours(1.0);
/// Fat of which there is so much in a thing is hard when it is colder than this, and soft from there on: common
/// practice, no source.
const SOLID_FAT: Fraction = Fraction::percent(60.0);
const HARD: Temperature = Temperature::celsius(10.0);
const SOFT: Temperature = Temperature::celsius(15.0);

/// The formulas that are made: those asked for, and before them those they use; what is there already is left out.
#[must_use]
pub fn dishes(formulas: &[Arc<Formula>], there: &BTreeSet<String>, around: &Surroundings) -> Vec<Dish> {
    let mut dishes: Vec<Dish> = Vec::new();
    let mut add = |formula: &Arc<Formula>, is_served: bool| {
        if there.contains(&formula.name) {
            return;
        }
        if let Some(dish) = dishes.iter_mut().find(|dish| dish.formula.name == formula.name) {
            if is_served && !dish.is_served {
                dish.is_served = true;
                dish.stages = formula.stages().map(|(at, _)| at).collect();
            }
            return;
        }
        let all = || formula.stages().map(|(at, _)| at).collect();
        let stages = if is_served { all() } else { product_stages(formula) };
        let rises = rises(formula, around).into();
        dishes.push(Dish { formula: Arc::clone(formula), stages, is_served, rises, seen: Vec::new(), is_held: false });
    };
    for formula in formulas {
        used_formulas(formula).iter().for_each(|other| add(other, false));
        add(formula, true);
    }
    dishes
}

/// The jobs of all dishes, each dish's in working order.
#[must_use]
pub fn jobs(dishes: &[Dish], place: &Workplace, around: &Surroundings) -> Vec<Job> {
    let mut jobs = Vec::new();
    for (d, dish) in dishes.iter().enumerate() {
        for at in &dish.stages {
            let stage = dish.formula.stage(*at);
            let told = foreseen_steps(&dish.formula, &dish.rises, *at);
            let done = |s: &usize| dish.is_held || !may_be_left_out(stage, *s);
            for (s, step) in stage.steps.iter().enumerate().filter(|(s, _)| done(s)) {
                let (decks, loads) = decks(step, place);
                let warm = if around.is_in_proofer(step) { warm(dish, *at, place) } else { 0 };
                let job = |span: Span, readies: Option<Readies>| Job {
                    dish: d,
                    at: *at,
                    step: s,
                    span,
                    is_work: readies.is_none() && step.attention == Attention::Active,
                    stations: match readies {
                        None => stations(step, around),
                        Some(Readies::Oven) => vec![Station::Oven],
                        Some(Readies::Soft(_)) => Vec::new(),
                    },
                    decks: if readies.is_none() { decks } else { 0 },
                    loads: if readies.is_none() { loads } else { 1 },
                    warm: if readies.is_none() { warm } else { 0 },
                    readies,
                };
                let soft = softened(stage, (at.1, s), around);
                if !soft.is_empty() {
                    jobs.push(job(Span::assumed(SOFTENS), Some(Readies::Soft(soft))));
                }
                if heats_the_oven(stage, s) {
                    jobs.push(job(Span::assumed(OVEN_HEATS), Some(Readies::Oven)));
                }
                let span = span(&dish.formula.components[at.0], step, told[s], dish.is_seen(*at)).times(loads);
                jobs.push(job(span, None));
            }
        }
    }
    jobs
}

/// The lines of a stage that a step takes first and that should be soft, where they come hard from the fridge: butter
/// and its like, by what the line says of its temperature.
fn softened(stage: &Stage, (own, step): (usize, usize), around: &Surroundings) -> Vec<usize> {
    let takes = |step: &Step, wanted: usize| {
        step.words.iter().any(|word| matches!(word, Word::Line { stage, line, .. } if *stage == own && *line == wanted))
    };
    let is_soft = |line: &Line| {
        let Some(one) = line.ingredient() else { return false };
        let is_fat = one.composition.share(Figure::Fat).is_some_and(|fat| fat >= SOLID_FAT);
        is_fat && around.stored(one).value <= HARD && line.temperature.is_some_and(|wanted| wanted.from >= SOFT)
    };
    let is_first = |line: usize| takes(&stage.steps[step], line) && !stage.steps[..step].iter().any(|before| takes(before, line));
    let lines = stage.lines.iter().enumerate().filter(|(at, line)| is_soft(line) && is_first(*at));
    lines.map(|(at, _)| at).collect()
}

/// How much of the oven a bake takes, and in how many loads it goes in; all of it and one where it does not say.
fn decks(step: &Step, place: &Workplace) -> (i32, u32) {
    let all = place.capacity(Station::Oven);
    let Some(takes) = step.decks.filter(|_| is_in_the_oven(step)) else { return (all, 1) };
    let takes = takes.as_pieces() * f64::from(DECK);
    let loads = (takes / f64::from(all) - 1e-9).ceil().clamp(1.0, 1000.0);
    (((takes - 1e-9).ceil() as i32).clamp(1, all), loads as u32)
}

/// How much of the proofer a stage takes: no more than there is.
fn warm(dish: &Dish, at: StageAt, place: &Workplace) -> i32 {
    let all = place.capacity(Station::Proofer);
    place.proofer_room.map_or(all, |_| decilitres(fridge_room(&dish.formula, at, &dish.rises)).clamp(1, all))
}

/// Whether the oven, or the proofer, can be as hot as two jobs ask at the same time.
#[must_use]
pub fn bake_together(dishes: &[Dish], one: &Job, other: &Job) -> bool {
    let heat = |job: &Job| dishes[job.dish].formula.stage(job.at).steps[job.step].temperature;
    match (heat(one), heat(other)) {
        (Some(one), Some(other)) => one.from <= other.to && other.from <= one.to,
        (one, other) => one.is_none() && other.is_none(),
    }
}

/// Whether the oven has to be hot for a step that no step before it has heated it for.
fn heats_the_oven(stage: &Stage, step: usize) -> bool {
    is_in_the_oven(&stage.steps[step]) && (step == 0 || !is_in_the_oven(&stage.steps[step - 1]))
}

fn is_in_the_oven(step: &Step) -> bool {
    step.action == Action::Bake || (step.action == Action::Rewarm && names(step, "oven"))
}

/// Whether a step names that among its equipment.
pub fn names(step: &Step, word: &str) -> bool {
    let is_word = |name: &String| name.split(|c: char| !c.is_alphabetic()).any(|part| part.eq_ignore_ascii_case(word));
    step.equipment.iter().any(is_word)
}

/// What a step stands on: by its action, or by what it names as its equipment.
fn stations(step: &Step, around: &Surroundings) -> Vec<Station> {
    let on_the_hob = matches!(
        step.action,
        Action::Griddle
            | Action::Fry
            | Action::Boil
            | Action::Simmer
            | Action::Reduce
            | Action::Scald
            | Action::Warm
            | Action::Melt
    );
    let mut stations = Vec::new();
    let on_a_griddle = step.action == Action::Griddle || (step.action == Action::Rewarm && names(step, "griddle"));
    if is_in_the_oven(step) {
        stations.push(Station::Oven);
    } else if on_the_hob || on_a_griddle || (names(step, "pan") && step.attention == Attention::Active) {
        stations.push(Station::Ring);
    }
    if on_a_griddle {
        stations.push(Station::Griddle);
    }
    if around.is_in_proofer(step) {
        stations.push(Station::Proofer);
    }
    if names(step, "mixer") {
        stations.push(Station::Mixer);
    }
    stations
}
