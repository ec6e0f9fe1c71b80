//! A formula as it was done in a trial: what was weighed, how warm it was, how long it took.

use crate::forecast::{Stand, Surroundings, is_mixing};
use formula::read::{Action, Attention, CookSeen, MixSeen, RiseSeen, Trial};
use formula::resolve::formula::StageAt;
use formula::resolve::trial::{cooking_step, waiting_step};
use formula::{Formula, Stage, Step};
use quantity::{Between, Temperature, TimeSpan};

/// The formula with what the trial saw in place of what it states; what was not seen stays as stated, or as the
/// kitchen has it. A waiting step with a temperature then stood at it, one without in the room.
#[must_use]
pub fn as_done(formula: &Formula, trial: &Trial, around: &Surroundings) -> Formula {
    let mut done = as_it_stands(formula, around);
    for rise in &trial.rises {
        let Some(at) = rise.of.find(formula) else { continue };
        let Some(step) = waiting_step(formula, at, rise.step) else { continue };
        risen(&mut stage(&mut done, at).steps[step], rise);
    }
    for cook in &trial.cooks {
        let Some(at) = cook.of.find(formula) else { continue };
        let Some(step) = cooking_step(formula, at, cook.step) else { continue };
        cooked(&mut stage(&mut done, at).steps[step], cook);
        if let Some(thickness) = cook.thickness {
            done.components[at.0].yields.thickness = Some(thickness);
        }
    }
    // Last, since a step may be put before the others.
    for mix in &trial.mixes {
        if let Some(at) = mix.of.find(formula) {
            mixed(stage(&mut done, at), mix);
        }
    }
    done
}

/// The formula with every waiting step where it stands in that kitchen: at a temperature, or in the room.
pub fn as_it_stands(formula: &Formula, around: &Surroundings) -> Formula {
    let mut done = formula.clone();
    for component in &mut done.components {
        for step in component.stages.iter_mut().flat_map(|stage| &mut stage.steps) {
            if step.attention == Attention::Waiting && !step.action.cooks() {
                step.temperature = match around.stand(step) {
                    Stand::Place(at) => Some(Between::just(at)),
                    Stand::Room => None,
                };
            }
        }
    }
    done
}

fn stage(formula: &mut Formula, (c, s): StageAt) -> &mut Stage {
    &mut formula.components[c].stages[s]
}

fn risen(step: &mut Step, seen: &RiseSeen) {
    step.temperature = seen.room.map(Between::just).or(step.temperature);
    step.time = seen.lasted.or_else(|| at_least(step.time, seen)).map(Between::just).or(step.time);
}

/// A step lasted as long as anything was seen in it, where its author notes no longer time.
fn at_least(stated: Option<Between<TimeSpan>>, seen: &RiseSeen) -> Option<TimeSpan> {
    let readings = seen.readings.iter().map(|reading| reading.after);
    let last = readings.chain(seen.doubled_after).chain(seen.ripe_after).reduce(TimeSpan::max)?;
    let stated = stated.map(|time| (time.from + time.to) * 0.5);
    stated.is_none_or(|stated| last > stated).then_some(last)
}

fn cooked(step: &mut Step, seen: &CookSeen) {
    step.temperature = seen.surface.map(Between::just).or(step.temperature);
    step.side_time = seen.side_time.map(Between::just).or(step.side_time);
    step.time = seen.time.map(Between::just).or(step.time);
}

fn mixed(stage: &mut Stage, seen: &MixSeen) {
    for own in &seen.lines {
        let Some(line) = stage.lines.iter_mut().find(|line| line.name == own.name.value) else { continue };
        line.temperature = own.temperature.map(Between::just).or(line.temperature);
        if let Some(mass) = own.mass {
            if line.is_flour {
                stage.flour += mass - line.mass.value;
            }
            line.mass.value = mass;
        }
    }
    if let Some(temperature) = seen.temperature {
        from_the_bowl(stage, temperature);
    }
}

/// The stage comes from the bowl that warm; where its method has no mixing step, it gets one that takes no time.
pub fn from_the_bowl(stage: &mut Stage, temperature: Temperature) {
    if stage.steps.iter().all(|step| !is_mixing(step.action)) {
        let place = stage.place.clone();
        stage.steps.insert(
            0,
            Step {
                action: Action::Mix,
                words: Vec::new(),
                time: None,
                side_time: None,
                at_a_time: None,
                decks: None,
                until: None,
                temperature: None,
                attention: Attention::Active,
                equipment: Vec::new(),
                place,
            },
        );
    }
    if let Some(step) = stage.steps.iter_mut().rev().find(|step| is_mixing(step.action)) {
        step.temperature = Some(Between::just(temperature));
    }
}
