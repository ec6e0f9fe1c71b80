//! How long a formula takes, hands and waiting apart.

use formula::read::Attention;
use formula::{Component, Formula, Step};
use quantity::{Between, TimeSpan};
use std::collections::BTreeMap;

/// How long a formula takes from the first step to the table, as its steps state.
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
    let steps = || {
        formula.components.iter().flat_map(|component| {
            component.stages.iter().flat_map(move |stage| stage.steps.iter().map(move |step| (component, step)))
        })
    };
    let sum = |test: &dyn Fn(&Step) -> bool| {
        add(steps().filter(|(_, step)| test(step)).filter_map(|(component, step)| lasts(component, step)))
    };
    let mut finished = BTreeMap::new();
    let mut total = NOTHING;
    for (c, component) in formula.components.iter().enumerate() {
        for s in 0..component.stages.len() {
            let done = finish(formula, (c, s), &mut finished);
            total = Between { from: total.from.max(done.from), to: total.to.max(done.to) };
        }
    }
    let preparing = sum(&|step| step.attention == Attention::Active && !step.action.cooks());
    let cooking = sum(&|step| step.action.cooks());
    // One pair of hands cannot be quicker than all its work.
    let total = Between { from: total.from.max(preparing.from + cooking.from), to: total.to.max(preparing.to + cooking.to) };
    Hours { preparing, cooking, total, untimed: steps().filter(|(_, step)| step.time.is_none()).count() }
}

/// How long a step takes for all pieces of its component, batch after batch.
#[must_use]
pub fn lasts(component: &Component, step: &Step) -> Option<Between<TimeSpan>> {
    let batches = step.batches(component.yields.pieces);
    step.time.map(|time| time.map(|span| span * batches))
}

const NOTHING: Between<TimeSpan> = Between { from: TimeSpan::ZERO, to: TimeSpan::ZERO };

fn add(spans: impl Iterator<Item = Between<TimeSpan>>) -> Between<TimeSpan> {
    spans.fold(NOTHING, |sum, span| Between { from: sum.from + span.from, to: sum.to + span.to })
}

/// When a stage is finished, counted from the start: after the stages it uses, and its own steps.
fn finish(
    formula: &Formula,
    at: (usize, usize),
    finished: &mut BTreeMap<(usize, usize), Between<TimeSpan>>,
) -> Between<TimeSpan> {
    let mut way = vec![at];
    while let Some(here) = way.last().copied() {
        let stage = formula.stage(here);
        let waits: Vec<_> = stage.uses().filter(|other| !finished.contains_key(other)).collect();
        if waits.is_empty() || finished.contains_key(&here) {
            let begun = stage
                .uses()
                .filter_map(|other| finished.get(&other))
                .fold(NOTHING, |latest, other| Between { from: latest.from.max(other.from), to: latest.to.max(other.to) });
            let component = &formula.components[here.0];
            let own = add(stage.steps.iter().filter_map(|step| lasts(component, step)));
            finished.insert(here, Between { from: begun.from + own.from, to: begun.to + own.to });
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
    let steps = component.stages.iter().flat_map(|stage| &stage.steps);
    add(steps.filter(|step| step.attention == Attention::Active).filter_map(|step| lasts(component, step)))
}
