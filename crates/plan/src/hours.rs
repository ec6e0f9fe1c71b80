//! How long a formula takes, hands and waiting apart.

use crate::held::may_be_left_out;
use crate::used::{product_stages, used_formulas};
use formula::read::Attention;
use formula::resolve::formula::{Content, StageAt};
use formula::{Component, Formula, Stage, Step};
use quantity::{Between, Mass, TimeSpan};
use std::collections::{BTreeMap, BTreeSet};

/// How long a formula takes from the first step to the table, as its steps state; the other formulas
/// whose products it uses are made for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hours {
    /// Minutes with hands, but not at the heat.
    pub preparing: Between<TimeSpan>,
    /// Time at the heat.
    pub cooking: Between<TimeSpan>,
    /// From the first step to the last, waits included: the longest chain of stages.
    pub total: Between<TimeSpan>,
    /// How many steps state no time, so that the truth is longer.
    pub untimed: usize,
}

/// Adds up a formula's steps. Stages that do not need each other go on side by side.
#[must_use]
pub fn hours(formula: &Formula) -> Hours {
    let Others { mut steps, made } = others(formula);
    let own: BTreeSet<StageAt> = formula.stages().map(|(at, _)| at).collect();
    steps.add(formula, &own);
    let total = longest(formula, &own, &made);
    let Steps { preparing, cooking, untimed } = steps;
    // One pair of hands cannot be quicker than all its work.
    let total = Between { from: total.from.max(preparing.from + cooking.from), to: total.to.max(preparing.to + cooking.to) };
    Hours { preparing, cooking, total, untimed }
}

/// The steps of a stage that are always done.
fn needed(stage: &Stage) -> impl Iterator<Item = &Step> {
    stage.steps.iter().enumerate().filter(|(at, _)| !may_be_left_out(stage, *at)).map(|(_, step)| step)
}

/// What the other formulas take whose products a formula uses, which do not grow with it.
#[derive(Debug, Default)]
pub struct Others {
    /// Their steps.
    steps: Steps,
    /// By their names: how long from their first step until each is made.
    pub made: BTreeMap<String, Between<TimeSpan>>,
}

impl Others {
    /// Minutes with hands, but not at the heat.
    #[must_use]
    pub const fn preparing(&self) -> Between<TimeSpan> {
        self.steps.preparing
    }

    /// Time at the heat.
    #[must_use]
    pub const fn cooking(&self) -> Between<TimeSpan> {
        self.steps.cooking
    }
}

/// What the other formulas take whose products a formula uses.
#[must_use]
pub fn others(formula: &Formula) -> Others {
    let mut all = Others::default();
    for other in used_formulas(formula) {
        let stages = product_stages(&other);
        all.steps.add(&other, &stages);
        all.made.insert(other.name.clone(), longest(&other, &stages, &all.made));
    }
    all
}

/// How long a step takes for all pieces of its component, batch after batch.
#[must_use]
pub fn lasts(component: &Component, step: &Step) -> Option<Between<TimeSpan>> {
    let batches = step.batches(component.yields.pieces);
    step.time.map(|time| time.map(|span| span * batches))
}

const NOTHING: Between<TimeSpan> = Between { from: TimeSpan::ZERO, to: TimeSpan::ZERO };

fn plus(one: Between<TimeSpan>, other: Between<TimeSpan>) -> Between<TimeSpan> {
    Between { from: one.from + other.from, to: one.to + other.to }
}

fn later(one: Between<TimeSpan>, other: Between<TimeSpan>) -> Between<TimeSpan> {
    Between { from: one.from.max(other.from), to: one.to.max(other.to) }
}

fn add(spans: impl Iterator<Item = Between<TimeSpan>>) -> Between<TimeSpan> {
    spans.fold(NOTHING, plus)
}

/// The sums of steps.
#[derive(Debug)]
struct Steps {
    preparing: Between<TimeSpan>,
    cooking: Between<TimeSpan>,
    untimed: usize,
}

impl Default for Steps {
    fn default() -> Self {
        Self { preparing: NOTHING, cooking: NOTHING, untimed: 0 }
    }
}

impl Steps {
    fn add(&mut self, formula: &Formula, stages: &BTreeSet<StageAt>) {
        for at in stages {
            let component = &formula.components[at.0];
            let stage = formula.stage(*at);
            for step in needed(stage) {
                let time = lasts(component, step);
                self.untimed += usize::from(time.is_none());
                let Some(time) = time else { continue };
                if step.action.cooks() {
                    self.cooking = plus(self.cooking, time);
                } else if step.attention == Attention::Active {
                    self.preparing = plus(self.preparing, time);
                }
            }
        }
    }
}

type Finished = BTreeMap<StageAt, Between<TimeSpan>>;
type Made = BTreeMap<String, Between<TimeSpan>>;

/// When the last of these stages is finished, counted from the start.
fn longest(formula: &Formula, stages: &BTreeSet<StageAt>, made: &Made) -> Between<TimeSpan> {
    let mut finished = Finished::new();
    stages.iter().map(|at| finish(formula, *at, made, &mut finished)).fold(NOTHING, later)
}

/// When a stage is finished, counted from the start: after the stages and formulas it uses, and its own steps.
fn finish(formula: &Formula, at: StageAt, made: &Made, finished: &mut Finished) -> Between<TimeSpan> {
    let mut way = vec![at];
    while let Some(here) = way.last().copied() {
        let stage = formula.stage(here);
        let waits: Vec<_> = stage.uses().filter(|other| !finished.contains_key(other)).collect();
        if waits.is_empty() || finished.contains_key(&here) {
            let stages = stage.uses().filter_map(|other| finished.get(&other));
            let begun =
                stages.chain(stage.uses_formulas().filter_map(|other| made.get(&other.name))).copied().fold(NOTHING, later);
            let component = &formula.components[here.0];
            finished.insert(here, plus(begun, add(needed(stage).filter_map(|step| lasts(component, step)))));
            way.pop();
        } else {
            way.extend(waits);
        }
    }
    finished.get(&at).copied().unwrap_or(NOTHING)
}

/// The time that a component's steps need hands for.
#[must_use]
pub fn hands_on(component: &Component) -> Between<TimeSpan> {
    let steps = component.stages.iter().flat_map(needed);
    add(steps.filter(|step| step.attention == Attention::Active).filter_map(|step| lasts(component, step)))
}

/// The time that a formula needs hands for, in the middle of what its steps state: its own, and of the formulas that it
/// uses the share that it takes of what they make.
#[must_use]
pub fn hands(formula: &Formula) -> TimeSpan {
    let middle = |range: Between<TimeSpan>| (range.from + range.to) * 0.5;
    let mut sum: TimeSpan = formula.components.iter().map(|component| middle(hands_on(component))).sum();
    let mut taken: BTreeMap<String, f64> = BTreeMap::new();
    let all = formula.stages().map(|(at, _)| at).collect();
    take(formula, &all, 1.0, &mut taken);
    // Each before those that it uses itself, so that all that is taken of it is known.
    for other in used_formulas(formula).into_iter().rev() {
        // Nobody makes it twice where once is enough, and half of it is half the work.
        let share = taken.get(&other.name).copied().unwrap_or_default().min(1.0);
        let stages = product_stages(&other);
        for at in &stages {
            let component = &other.components[at.0];
            let active = other.stage(*at).steps.iter().filter(|step| step.attention == Attention::Active);
            sum += middle(add(active.filter_map(|step| lasts(component, step)))) * share;
        }
        take(&other, &stages, share, &mut taken);
    }
    sum
}

/// Adds what the stages of a formula take of other formulas, as shares of what those make.
fn take(formula: &Formula, stages: &BTreeSet<StageAt>, share: f64, taken: &mut BTreeMap<String, f64>) {
    for line in stages.iter().flat_map(|at| &formula.stage(*at).lines) {
        let Content::Formula(blend) = &line.content else { continue };
        if blend.made > Mass::ZERO {
            *taken.entry(blend.name.clone()).or_default() += share * (line.mass.value / blend.made);
        }
    }
}
