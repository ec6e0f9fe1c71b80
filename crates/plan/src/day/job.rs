//! The steps of all that is made, each with its time, its stations and what it follows.

use super::span::{Span, Told, foreseen_steps, span};
use super::workplace::Station;
use crate::used::{product_stages, used_formulas};
use bench::forecast::{Surroundings, rises};
use formula::read::{Action, Attention};
use formula::resolve::formula::StageAt;
use formula::{Formula, Stage, Step};
use quantity::TimeSpan;
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
}

/// What is done in one go.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// Which dish.
    pub dish: usize,
    /// Which stage of its formula.
    pub at: StageAt,
    /// Which step of the stage; the oven is heated for it where [`Job::heats_oven`].
    pub step: usize,
    /// Whether it is the heating of the oven for that step, which no formula writes down.
    pub heats_oven: bool,
    /// How long it takes.
    pub span: Span,
    /// Whether it needs hands all the time; otherwise only to be set going.
    pub is_work: bool,
    /// What it stands on, in or under, besides hands.
    pub stations: Vec<Station>,
}

impl Job {
    /// Whether nobody may sleep or leave while it goes on.
    #[must_use]
    pub fn wants_somebody(&self) -> bool {
        self.is_work || self.stations.iter().any(|station| station.is_hot())
    }
}

/// How long a cold oven takes to be hot all through: common practice, no source.
const OVEN_HEATS: TimeSpan = TimeSpan::minutes(30.0);

/// The formulas that are made: those asked for, and before them those they use; what is there already is left out.
#[must_use]
pub fn dishes(formulas: &[Arc<Formula>], there: &BTreeSet<String>) -> Vec<Dish> {
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
        dishes.push(Dish { formula: Arc::clone(formula), stages, is_served });
    };
    for formula in formulas {
        used_formulas(formula).iter().for_each(|other| add(other, false));
        add(formula, true);
    }
    dishes
}

/// The jobs of all dishes, each dish's in working order.
#[must_use]
pub fn jobs(dishes: &[Dish], around: &Surroundings) -> Vec<Job> {
    let mut jobs = Vec::new();
    for (d, dish) in dishes.iter().enumerate() {
        let foreseen = rises(&dish.formula, around);
        for at in &dish.stages {
            let stage = dish.formula.stage(*at);
            let told = foreseen_steps(&dish.formula, &foreseen, *at);
            for (s, step) in stage.steps.iter().enumerate() {
                let job = |span: Span, heats_oven: bool| Job {
                    dish: d,
                    at: *at,
                    step: s,
                    heats_oven,
                    span,
                    is_work: !heats_oven && step.attention == Attention::Active,
                    stations: if heats_oven { vec![Station::Oven] } else { stations(step, around) },
                };
                if is_first_bake(stage, s) {
                    let heats =
                        Span { early: OVEN_HEATS, likely: OVEN_HEATS, late: OVEN_HEATS, leeway: OVEN_HEATS, from: Told::Assumed };
                    jobs.push(job(heats, true));
                }
                jobs.push(job(span(&dish.formula.components[at.0], step, told[s]), false));
            }
        }
    }
    jobs
}

fn is_first_bake(stage: &Stage, step: usize) -> bool {
    stage.steps[step].action == Action::Bake && (step == 0 || stage.steps[step - 1].action != Action::Bake)
}

/// What a step stands on: by its action, or by what it names as its equipment.
fn stations(step: &Step, around: &Surroundings) -> Vec<Station> {
    let names = |word: &str| {
        let is_word = |name: &String| name.split(|c: char| !c.is_alphabetic()).any(|part| part.eq_ignore_ascii_case(word));
        step.equipment.iter().any(is_word)
    };
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
    if step.action == Action::Bake {
        stations.push(Station::Oven);
    } else if on_the_hob || (names("pan") && step.attention == Attention::Active) {
        stations.push(Station::Ring);
    }
    if step.action == Action::Griddle {
        stations.push(Station::Griddle);
    }
    if around.is_in_proofer(step) {
        stations.push(Station::Proofer);
    }
    if names("mixer") {
        stations.push(Station::Mixer);
    }
    stations
}
