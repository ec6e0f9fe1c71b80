//! Ties a trial to the formula that was baked: which stage, which step, which line is meant.

use super::formula::StageAt;
use crate::fault::{self, Fault};
use crate::ingredient::{did_you_mean, nearest};
use crate::read::{Action, At, Attention, OfStage, StepSeen, Trial};
use crate::{Diagnostic, Formula, Stage, Step};

impl OfStage {
    /// The stage that is meant, if the formula has it.
    #[must_use]
    pub fn find(&self, formula: &Formula) -> Option<StageAt> {
        let fits = |c: usize| self.component.as_ref().is_none_or(|name| formula.components[c].name == name.value);
        formula.stages().find(|((c, _), stage)| stage.name == self.stage.value && fits(*c)).map(|(at, _)| at)
    }
}

/// The waiting step of a stage that a rise is about: the one that is named, or the first.
#[must_use]
pub fn waiting_step(formula: &Formula, at: StageAt, named: Option<StepSeen>) -> Option<usize> {
    let stage = formula.stage(at);
    match named {
        Some(named) => numbered(stage, named, waits),
        None => stage.steps.iter().position(waits),
    }
}

/// The step of a stage that a cook is about: the one that is named, or the first on a griddle or in fat.
#[must_use]
pub fn cooking_step(formula: &Formula, at: StageAt, named: Option<StepSeen>) -> Option<usize> {
    let stage = formula.stage(at);
    match named {
        Some(named) => numbered(stage, named, |step| step.action.cooks()),
        None => stage.steps.iter().position(|step| matches!(step.action, Action::Griddle | Action::Fry)),
    }
}

/// What a trial calls a step of a stage: by its number where others of its kind and action come before it.
#[must_use]
pub fn step_seen(stage: &Stage, step: usize) -> StepSeen {
    let own = &stage.steps[step];
    let is_alike = |other: &&Step| other.action == own.action && waits(other) == waits(own);
    let before = if own.action.cooks() || waits(own) { stage.steps[..step].iter().filter(is_alike).count() } else { 0 };
    StepSeen { action: own.action, number: before + 1 }
}

fn waits(step: &Step) -> bool {
    step.attention == Attention::Waiting && !step.action.cooks()
}

fn numbered(stage: &Stage, named: StepSeen, is_of: impl Fn(&Step) -> bool) -> Option<usize> {
    let alike = stage.steps.iter().enumerate().filter(|(_, step)| step.action == named.action && is_of(step));
    alike.map(|(at, _)| at).nth(named.number - 1)
}

/// What a trial calls by a name that its formula does not have.
#[must_use]
pub fn misplaced(trial: &Trial, formula: &Formula) -> Vec<Diagnostic> {
    let mut found = Vec::new();
    let mut place = |of: &OfStage| {
        let at = of.find(formula);
        if at.is_none() {
            found.push(unknown_stage(trial, formula, of));
        }
        at
    };
    let mut lost = Vec::new();
    for mix in &trial.mixes {
        let Some(at) = place(&mix.of) else { continue };
        let stage = formula.stage(at);
        for line in mix.lines.iter().filter(|line| stage.lines.iter().all(|own| own.name != line.name.value)) {
            let known = stage.lines.iter().map(|line| line.name.as_str()).collect();
            lost.push(unknown(trial, &fault::UNKNOWN_INGREDIENT, &line.name, "line", &stage.title, known));
        }
    }
    for rise in &trial.rises {
        if let Some(at) = place(&rise.of).filter(|at| waiting_step(formula, *at, rise.step).is_none()) {
            lost.push(no_step(trial, formula, &rise.of, at, "in which something rises"));
        }
    }
    for cook in &trial.cooks {
        if let Some(at) = place(&cook.of).filter(|at| cooking_step(formula, *at, cook.step).is_none()) {
            lost.push(no_step(trial, formula, &cook.of, at, "on a griddle or in fat"));
        }
    }
    found.extend(lost);
    found
}

fn unknown_stage(trial: &Trial, formula: &Formula, of: &OfStage) -> Diagnostic {
    let title = &formula.head.title;
    match &of.component {
        Some(name) if formula.components.iter().all(|component| component.name != name.value) => {
            let known = formula.components.iter().map(|component| component.name.as_str()).collect();
            unknown(trial, &fault::UNKNOWN_COMPONENT, name, "component", title, known)
        }
        _ => {
            let known = formula.stages().map(|(_, stage)| stage.name.as_str()).collect();
            unknown(trial, &fault::UNKNOWN_STAGE, &of.stage, "stage", title, known)
        }
    }
}

fn unknown(trial: &Trial, fault: &Fault, name: &At<String>, what: &str, of: &str, known: Vec<&str>) -> Diagnostic {
    let found = fault.at(name.place(&trial.file), format!("“{of}” has no {what} called “{}”", name.value));
    match nearest(&name.value, known.iter().copied()) {
        Some(near) => found.hint(did_you_mean(near)),
        None => found.hint(format!("it has: {}", known.join(", "))),
    }
}

fn no_step(trial: &Trial, formula: &Formula, of: &OfStage, at: StageAt, what: &str) -> Diagnostic {
    let stage = formula.stage(at);
    let steps = step_words(stage);
    let message = format!("“{}” has no such step {what}", stage.title);
    fault::UNKNOWN_STAGE.at(of.stage.place(&trial.file), message).hint(format!("its steps are: {}", steps.join(", ")))
}

/// The steps of a stage as a trial calls them.
#[must_use]
pub fn step_words(stage: &Stage) -> Vec<String> {
    (0..stage.steps.len()).map(|step| step_seen(stage, step).word()).collect()
}
