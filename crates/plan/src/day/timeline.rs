//! The timeline of a day: what is done when, and why not every wish could be granted.

use super::clock::{Away, Clock, aways, slots_for, span_of};
use super::happened::{Happened, Progress, progress};
use super::job::{Dish, Job, dishes, jobs};
use super::model::{Frame, Model, Parts, Want, model};
use super::order::{Follows, order};
use super::stays::{Stay, stays};
use super::workplace::Workplace;
use crate::engine::{Engine, Outcome, Plan, Reached, Watch};
use crate::problem::{Problem, Slot};
use bench::forecast::Surroundings;
use formula::Formula;
use jiff::ZonedDateTime;
use quantity::TimeSpan;
use std::collections::BTreeSet;
use std::sync::Arc;

/// What is wanted of a day.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// What is served together.
    pub formulas: Vec<Arc<Formula>>,
    /// When.
    pub serve: ZonedDateTime,
    /// Nothing can begin before.
    pub now: ZonedDateTime,
    /// The formulas that are made already, by name.
    pub there: BTreeSet<String>,
    /// What has happened already.
    pub happened: Vec<Happened>,
    /// What the kitchen has, and when nobody is at hand.
    pub place: Workplace,
    /// How warm the kitchen is.
    pub around: Surroundings,
}

/// Why there is no timeline.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Serving would be in the past.
    InThePast,
    /// Nothing has to be done.
    NothingToDo,
    /// Something that is told to have happened is no step of the day, or one of several: which one it was.
    Unknown(Happened),
    /// It has more steps than can be planned: how many.
    TooMany(usize),
    /// It would take longer than can be planned.
    TooLong,
    /// There is no way to do it whatever gives way.
    Impossible,
    /// It was stopped before there was any plan.
    Stopped,
}

/// What is done when.
#[derive(Clone, Debug)]
pub struct Timeline {
    /// The kitchen.
    pub place: Workplace,
    /// What is made.
    pub dishes: Vec<Dish>,
    /// The jobs.
    pub jobs: Vec<Job>,
    /// What follows what.
    pub follows: Vec<Follows>,
    /// What stands in bowls and in the fridge.
    pub stays: Vec<Stay>,
    /// The jobs that are still to be done or go on, with their times, in order of time.
    pub entries: Vec<Entry>,
    /// When serving was wanted.
    pub wanted: ZonedDateTime,
    /// When everything is on the table.
    pub served: ZonedDateTime,
    /// When nobody is at hand, and what is left of that.
    pub left: Vec<Left>,
    /// The wishes that give way.
    pub unmet: Vec<Unmet>,
    /// Why: wishes that stand against each other, none of which can be left out; more than one such group where
    /// the first is not the only one.
    pub conflicts: Vec<Vec<Against>>,
    /// What each aim has come to.
    pub reached: Vec<Reached>,
}

/// A job with its times.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Which job.
    pub job: usize,
    /// When it begins.
    pub begin: ZonedDateTime,
    /// When it is done.
    pub end: ZonedDateTime,
    /// When what it made is needed; the same as its end if at once, or never.
    pub needed: ZonedDateTime,
    /// Whether hands are needed only to set it going.
    pub is_set_going: bool,
}

/// A time in which nobody is at hand, as it could be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Left {
    /// Its place among all such times of the plan, by which [`Want::Left`] calls it.
    pub at: usize,
    /// As wished for.
    pub away: Away,
    /// What is left of it undisturbed: from when to when; none if it is given up.
    pub kept: Option<(ZonedDateTime, ZonedDateTime)>,
}

/// A wish that gives way.
#[derive(Clone, Debug, PartialEq)]
pub struct Unmet {
    /// What it is.
    pub want: Want,
    /// How far.
    pub gives_way: HowFar,
}

/// How far a wish gives way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HowFar {
    /// By so long.
    Time(TimeSpan),
    /// By so much room: bowls, or decilitres.
    Room(i32),
}

impl HowFar {
    fn of(want: Want, by: Slot) -> Self {
        if matches!(want, Want::Room(_)) { Self::Room(by) } else { Self::Time(span_of(by)) }
    }

    /// The time; none where room gives way.
    #[must_use]
    pub const fn time(self) -> TimeSpan {
        match self {
            Self::Time(span) => span,
            Self::Room(_) => TimeSpan::ZERO,
        }
    }
}

/// A wish of a conflict.
#[derive(Clone, Debug, PartialEq)]
pub struct Against {
    /// What it is.
    pub want: Want,
    /// How far it would have to give way if it alone did; none if that would not help.
    pub alone: Option<HowFar>,
}

/// The most jobs that are planned: far more than one kitchen does in a fortnight's waking hours.
pub const MOST_JOBS: usize = 1000;
/// The longest that is planned: a fortnight.
const LONGEST: Slot = 14 * 24 * 12;
/// Room beside the longest chain, for nights and for what cannot go on side by side.
const ROOM: Slot = 36 * 12;

/// Plans a day.
///
/// # Errors
/// Refuses a serving time in the past, nothing to do, more than [`MOST_JOBS`] jobs, what takes longer than a
/// fortnight, and what is told to have happened but is no step of the day.
pub fn timeline(wanted: &Wanted, engine: &dyn Engine, watch: &mut dyn Watch) -> Result<Timeline, Refusal> {
    if wanted.serve <= wanted.now {
        return Err(Refusal::InThePast);
    }
    let place = wanted.place.clone();
    let dishes = dishes(&wanted.formulas, &wanted.there);
    let jobs = jobs(&dishes, &place, &wanted.around);
    if jobs.is_empty() {
        return Err(Refusal::NothingToDo);
    }
    if jobs.len() > MOST_JOBS {
        return Err(Refusal::TooMany(jobs.len()));
    }
    let follows = order(&dishes, &jobs);
    let progress = progress(&wanted.happened, &dishes, &jobs, &follows).map_err(|one| Refusal::Unknown(one.clone()))?;
    let before = longest(&jobs, &follows).saturating_add(ROOM);
    if before > LONGEST {
        return Err(Refusal::TooLong);
    }
    let clock = Clock::with(&wanted.serve, before);
    let earliest = clock.slot_after(wanted.now.timestamp()).max(0);
    let frame = Frame { serve: before, earliest, end: before * 2 };
    let aways = aways(&place, &clock.moment(earliest), &clock.moment(frame.end));
    let stays = stays(&dishes, &jobs, &follows, &wanted.around);
    let parts = Parts {
        dishes: &dishes,
        jobs: &jobs,
        follows: &follows,
        stays: &stays,
        place: &place,
        aways: &aways,
        progress: &progress,
    };
    let model = model(parts, &clock, frame);
    let plan = match engine.solve(&model.problem, watch) {
        Outcome::Found(plan) => plan,
        Outcome::Impossible => return Err(Refusal::Impossible),
        Outcome::Stopped => return Err(Refusal::Stopped),
    };
    let is_done = |job: usize| matches!(progress[job], Progress::Done(_));
    let (entries, left) = (entries(&model, &jobs, &plan, &clock), left(&model, aways, &plan, &clock));
    let (unmet, conflicts) = (unmet(&model, &plan), conflicts(&model, &plan));
    let entries = entries.into_iter().filter(|entry| !is_done(entry.job)).collect();
    let served = clock.moment(plan.begins[model.serving]);
    let wanted = wanted.serve.clone();
    Ok(Timeline { place, dishes, jobs, follows, stays, entries, wanted, served, left, unmet, conflicts, reached: plan.reached })
}

/// The longest chain of jobs, in slots.
fn longest(jobs: &[Job], follows: &[Follows]) -> Slot {
    let mut ends: Vec<Slot> = jobs.iter().map(|job| slots_for(job.span.likely)).collect();
    // Chains have no circles, so that as many rounds as there are jobs reach the end of the longest.
    for _ in 0..jobs.len() {
        let mut is_settled = true;
        for one in follows {
            let Some(after) = one.after else { continue };
            let end = ends[one.before].saturating_add(slots_for(jobs[after].span.likely));
            if end > ends[after] {
                ends[after] = end;
                is_settled = false;
            }
        }
        if is_settled {
            break;
        }
    }
    ends.into_iter().max().unwrap_or(0)
}

fn entries(model: &Model, jobs: &[Job], plan: &Plan, clock: &Clock) -> Vec<Entry> {
    let Problem { tasks, links, .. } = &model.problem;
    let end = |task: usize| plan.begins[task] + tasks[task].lasts;
    let mut order: Vec<usize> = (0..jobs.len()).collect();
    order.sort_by_key(|job| (plan.begins[*job], end(*job), *job));
    let entry = |job: usize| {
        let after = links.iter().filter(|link| link.before == job).map(|link| plan.begins[link.after]);
        Entry {
            job,
            begin: clock.moment(plan.begins[job]),
            end: clock.moment(end(job)),
            needed: clock.moment(after.min().unwrap_or(end(job)).max(end(job))),
            is_set_going: links.iter().any(|link| link.after == job && link.before > model.serving),
        }
    };
    order.into_iter().map(entry).collect()
}

fn left(model: &Model, aways: Vec<Away>, plan: &Plan, clock: &Clock) -> Vec<Left> {
    let serving = clock.moment(plan.begins[model.serving]);
    let first = clock.moment(plan.begins.iter().copied().min().unwrap_or(0));
    let kept = |at: usize| {
        let wish = model.wants.iter().position(|want| *want == Want::Left(at))?;
        let (from, to) = model.problem.rest(&model.problem.wishes[wish], &plan.begins)?;
        (to > from).then(|| (clock.moment(from), clock.moment(to)))
    };
    let one = |(at, away): (usize, Away)| Left { at, kept: kept(at), away };
    let all = aways.into_iter().enumerate().map(one);
    all.filter(|left| left.away.from < serving && left.away.to > first).collect()
}

fn unmet(model: &Model, plan: &Plan) -> Vec<Unmet> {
    let wishes = model.problem.wishes.iter().zip(&model.wants);
    let all = wishes.map(|(wish, want)| (*want, model.problem.gives_way(wish, &plan.begins)));
    all.filter(|(_, by)| *by > 0).map(|(want, by)| Unmet { want, gives_way: HowFar::of(want, by) }).collect()
}

fn conflicts(model: &Model, plan: &Plan) -> Vec<Vec<Against>> {
    let one = |(wish, alone): &(usize, Option<Slot>)| {
        let want = model.wants[*wish];
        Against { want, alone: alone.map(|by| HowFar::of(want, by)) }
    };
    plan.conflicts.iter().map(|conflict| conflict.wishes.iter().map(one).collect()).collect()
}
