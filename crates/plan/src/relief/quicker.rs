//! Ferments that take as long as there is time for: as they are dosed, where they are ripe by then, or dosed anew.

use super::{Help, Relief, helps};
use crate::alternatives::{AROUND, dose, is_yeast, newly_minded, retimed};
use crate::day::span::foreseen_steps;
use crate::day::{Depth, Job, Timeline, Wanted, again};
use crate::engine::{Engine, Watch};
use bench::forecast::rises;
use bench::target::{When, find};
use formula::read::{Attention, Condition};
use formula::{Book, Formula};
use quantity::{Between, TimeSpan};
use std::sync::Arc;

/// No ferment is hurried to less.
const LEAST: TimeSpan = TimeSpan::minutes(15.0);
/// More than what is missing, where that alone does not do: what comes after may be shorter or longer too.
const BESIDE: TimeSpan = TimeSpan::minutes(15.0);
/// More than that nobody reads.
const MOST: usize = 3;

/// The ferments that would help, each with the time that it then takes.
pub fn quicker(book: &Book, wanted: &Wanted, day: &Timeline, (engine, watch): (&dyn Engine, &mut dyn Watch)) -> Vec<Relief> {
    let mut found = Vec::new();
    for job in 0..day.jobs.len() {
        if found.len() == MOST {
            break;
        }
        let Some(which) = dosable(wanted, day, job) else { continue };
        for takes in times(day, &day.jobs[job]) {
            if watch.wants_to_stop() {
                return found;
            }
            let Some((formula, help)) = fitted(wanted, day, (which, job), takes) else { continue };
            if !newly_minded(book, &wanted.formulas[which], &formula).is_empty() {
                continue;
            }
            let mut formulas = wanted.formulas.clone();
            formulas[which] = Arc::new(formula);
            let wanted = Wanted { formulas, ..wanted.clone() };
            let tried = again(&wanted, day, Depth::Wishes, (engine, watch));
            if let Some(then) = tried.ok().filter(|tried| helps(tried, day)) {
                found.push(Relief { help, then });
                break;
            }
        }
    }
    found
}

/// Which formula a job is of, if it waits for the yeast of a stage that is still to be mixed.
fn dosable(wanted: &Wanted, day: &Timeline, job: usize) -> Option<usize> {
    let Job { dish, at, step, .. } = day.jobs[job];
    let formula = &day.dishes[dish].formula;
    let stage = formula.stage(at);
    let first = day.jobs.iter().position(|one| one.dish == dish && one.at == at && one.is_step())?;
    let is_to_come = day.entries.iter().any(|entry| entry.job == first && entry.begin >= wanted.now);
    let told = foreseen_steps(formula, &day.dishes[dish].rises, at);
    let is_first = (0..=step).find(|step| told[*step].is_some_and(|one| one.reached.is_some())) == Some(step);
    let is_waiting = stage.steps[step].attention == Attention::Waiting && stage.steps[step].time.is_some();
    if !(day.jobs[job].is_step() && first != job && is_to_come && is_waiting && is_first) {
        return None;
    }
    let is_dosed = stage.lines.iter().any(is_yeast) && find(formula, &stage.name) == Some(at);
    wanted.formulas.iter().position(|one| is_dosed && one.name == formula.name)
}

/// The times that a job might take instead: shorter by what is missing; or longer, where somebody has to be up for its end.
fn times(day: &Timeline, job: &Job) -> Vec<TimeSpan> {
    let missing = day.unmet.iter().map(|unmet| unmet.gives_way.time());
    let most = missing.clone().fold(TimeSpan::ZERO, TimeSpan::max);
    let all: TimeSpan = missing.sum();
    let likely = job.span.likely;
    let mut times: Vec<TimeSpan> = Vec::new();
    for time in [likely - most, likely - all, likely - all - BESIDE, likely + most, likely + all + BESIDE] {
        let time = TimeSpan::minutes((time.as_minutes() / 5.0).floor() * 5.0);
        if most > TimeSpan::ZERO && time >= LEAST && !times.contains(&time) {
            times.push(time);
        }
    }
    times
}

/// The formula with a job that takes that time, if it can.
fn fitted(wanted: &Wanted, day: &Timeline, (which, job): (usize, usize), takes: TimeSpan) -> Option<(Formula, Help)> {
    let Job { dish, at, step, .. } = day.jobs[job];
    let mut formula = Formula::clone(&wanted.formulas[which]);
    let told = foreseen_steps(&formula, &day.dishes[dish].rises, at)[step]?.reached.clone()?;
    let rises_by = matches!(formula.stage(at).steps[step].until, Some(Condition::RisenBy(_)));
    let time =
        |formula: &mut Formula, time: Between<TimeSpan>| formula.components[at.0].stages[at.1].steps[step].time = Some(time);
    if !rises_by && takes >= When::Ripe(takes).told(&told.from) && takes <= told.to.value {
        time(&mut formula, Between { from: takes, to: told.to.value });
        return Some((formula, Help::AsItIs(job, takes)));
    }
    let when = if rises_by { When::Risen(takes) } else { When::Ripe(takes) };
    let doses = dose(&mut formula, at, when, &wanted.around).ok()?;
    let rises = rises(&formula, &wanted.around);
    let reached = foreseen_steps(&formula, &rises, at)[step]?.reached.clone()?;
    let lasts = if rises_by {
        Between { from: takes * (1.0 - AROUND), to: takes * (1.0 + AROUND) }
    } else {
        Between { from: takes, to: reached.to.value.max(takes) }
    };
    time(&mut formula, lasts);
    retimed(&mut formula, (at, step), &wanted.around);
    Some((formula, Help::Dose(job, doses, takes)))
}
