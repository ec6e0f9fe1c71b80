//! A day planned: the problem set up, solved, and turned back into moments.

use super::clock::{Away, Clock, aways, slots_for};
use super::fixed::{Fixed, fixed, reach};
use super::happened::{Progress, progress};
use super::job::{Dish, Job, dishes, jobs as jobs_of};
use super::model::{AIMS, FRESH, Frame, Model, Parts, Want, model};
use super::order::{Follows, order};
use super::seen::{Learnt, foresee_anew};
use super::stays::stays;
use super::timeline::{Against, Entry, HowFar, Left, Refusal, Timeline, Unmet, Wanted};
use super::workplace::Workplace;
use crate::engine::{Alone, Engine, Outcome, Plan, Watch};
use crate::held::may_be_left_out;
use crate::problem::{Problem, Slot, Wish};
use jiff::ZonedDateTime;

/// The most jobs that are planned: far more than one kitchen does in a fortnight's waking hours.
pub const MOST_JOBS: usize = 1000;
/// The longest that is planned: a fortnight.
const LONGEST: Slot = 14 * 24 * 12;
/// Room beside the longest chain, for nights and for what cannot go on side by side.
const ROOM: Slot = 36 * 12;

/// Plans a day. What may be held or stored and warmed again is so only where an earlier wish, or freshness, gains by it.
///
/// # Errors
/// Refuses a serving time in the past, nothing to do, more than [`MOST_JOBS`] jobs, what takes longer than a
/// fortnight, what is told to have happened or fixed but is no step of the day, and what is fixed to a time a fortnight
/// from serving.
pub fn timeline(wanted: &Wanted, engine: &dyn Engine, watch: &mut dyn Watch) -> Result<Timeline, Refusal> {
    if wanted.serve <= wanted.now {
        return Err(Refusal::InThePast);
    }
    let mut dishes = dishes(&wanted.formulas, &wanted.there, &wanted.around);
    let may_be_held: Vec<usize> = (0..dishes.len()).filter(|dish| may_be_held(&dishes[*dish])).collect();
    if may_be_held.is_empty() {
        return planned(wanted, dishes, Depth::Full, (engine, watch));
    }
    let mut best = planned(wanted, dishes.clone(), Depth::Freshness, (engine, watch));
    if matches!(best, Err(Refusal::Unknown(_))) {
        // It may be the holding itself that has happened.
        may_be_held.iter().for_each(|dish| dishes[*dish].is_held = true);
        return planned(wanted, dishes, Depth::Full, (engine, watch));
    }
    for dish in may_be_held {
        let Ok(so_far) = &best else { break };
        let is_fresh = so_far.reached.get(FRESH).is_some_and(|fresh| fresh.value <= FRESH_ENOUGH);
        if (so_far.unmet.is_empty() && is_fresh) || watch.wants_to_stop() {
            break;
        }
        dishes[dish].is_held = true;
        match planned(wanted, dishes.clone(), Depth::Freshness, (engine, watch)) {
            Ok(held) if is_better(&held, so_far) => best = Ok(held),
            _ => dishes[dish].is_held = false,
        }
    }
    let whole = planned(wanted, dishes, Depth::Full, (engine, watch));
    whole.or_else(|_| best.map(|so_far| Timeline { is_why_cut_short: !so_far.unmet.is_empty(), ..so_far }))
}

/// Plans a day on which nothing is held or warmed again.
///
/// # Errors
/// Those of [`timeline`].
pub fn planned_without_holding(
    wanted: &Wanted,
    depth: Depth,
    (engine, watch): (&dyn Engine, &mut dyn Watch),
) -> Result<Timeline, Refusal> {
    planned(wanted, dishes(&wanted.formulas, &wanted.there, &wanted.around), depth, (engine, watch))
}

/// Plans something like a day again, with the same things held.
///
/// # Errors
/// Those of [`timeline`].
pub fn again(
    wanted: &Wanted,
    day: &Timeline,
    depth: Depth,
    (engine, watch): (&dyn Engine, &mut dyn Watch),
) -> Result<Timeline, Refusal> {
    let mut dishes = dishes(&wanted.formulas, &wanted.there, &wanted.around);
    let is_held = |name: &str| day.dishes.iter().any(|dish| dish.formula.name == name && dish.is_held);
    dishes.iter_mut().for_each(|dish| dish.is_held = is_held(&dish.formula.name));
    planned(wanted, dishes, depth, (engine, watch))
}

/// What comes to the table as fresh as that, an hour from the heat, is not held to be fresher.
const FRESH_ENOUGH: Slot = 24;

/// How far a day is worked on.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Depth {
    /// Only as far as what is wished for, and without a reason for what gives way.
    Wishes,
    /// Only as far as freshness, and without a reason.
    Freshness,
    /// To the end, but without a reason.
    Order,
    /// To the end.
    Full,
}

impl Depth {
    /// Of how many aims.
    const fn aims(self) -> usize {
        match self {
            Self::Wishes => FRESH,
            Self::Freshness => FRESH + 1,
            Self::Order | Self::Full => AIMS.len(),
        }
    }
}

fn may_be_held(dish: &Dish) -> bool {
    let mut stages = dish.stages.iter().map(|at| dish.formula.stage(*at));
    stages.any(|stage| (0..stage.steps.len()).any(|step| may_be_left_out(stage, step)))
}

/// Whether a day is better by the first aim, as far as freshness, in which two differ.
fn is_better(one: &Timeline, other: &Timeline) -> bool {
    let value = |day: &Timeline| -> Vec<Slot> { day.reached.iter().take(FRESH + 1).map(|reached| reached.value).collect() };
    value(one) < value(other)
}

/// What is to be put in order.
struct Laid {
    jobs: Vec<Job>,
    follows: Vec<Follows>,
    progress: Vec<Progress>,
    learnt: Vec<Learnt>,
    fixed: Vec<Fixed>,
}

/// The jobs of the dishes, what follows what, how far they have come, and what was seen of them.
fn laid(wanted: &Wanted, dishes: &mut [Dish], place: &Workplace) -> Result<Laid, Refusal> {
    let mut jobs = jobs_of(dishes, place, &wanted.around);
    if jobs.is_empty() {
        return Err(Refusal::NothingToDo);
    }
    if jobs.len() > MOST_JOBS {
        return Err(Refusal::TooMany(jobs.len()));
    }
    let mut follows = order(dishes, &jobs);
    let progress = progress(&wanted.happened, dishes, &jobs, &follows).map_err(|one| Refusal::Unknown(one.of.clone()))?;
    let learnt = foresee_anew(&wanted.seen, (dishes, &jobs), (&progress, &wanted.now), &wanted.around)?;
    if !learnt.is_empty() {
        jobs = jobs_of(dishes, place, &wanted.around);
        follows = order(dishes, &jobs);
    }
    let fixed = fixed(&wanted.fixes, (dishes, &jobs), &progress)?;
    Ok(Laid { jobs, follows, progress, learnt, fixed })
}

fn planned(
    wanted: &Wanted,
    mut dishes: Vec<Dish>,
    depth: Depth,
    (engine, watch): (&dyn Engine, &mut dyn Watch),
) -> Result<Timeline, Refusal> {
    let place = wanted.place.clone();
    let Laid { jobs, follows, progress, learnt, fixed } = laid(wanted, &mut dishes, &place)?;
    let chain = longest(&jobs, &follows);
    let before = chain.saturating_add(ROOM);
    if before > LONGEST {
        return Err(Refusal::TooLong);
    }
    let (early, late) = reach(&wanted.fixes, &wanted.serve, LONGEST)?;
    let before = before.max((early + chain).min(LONGEST));
    let after = before.max((late + chain).min(LONGEST));
    let clock = Clock::with(&wanted.serve, before);
    let earliest = clock.slot_after(wanted.now.timestamp()).max(0);
    let frame = Frame { serve: before, earliest, end: before + after };
    let aways = aways(&place, &clock.moment(earliest), &clock.moment(frame.end));
    let stays = stays(&dishes, &jobs, &follows, &place, &wanted.around);
    let parts = Parts {
        dishes: &dishes,
        jobs: &jobs,
        follows: &follows,
        stays: &stays,
        place: &place,
        aways: &aways,
        progress: &progress,
        fixed: &fixed,
    };
    let mut model = model(parts, &clock, frame);
    model.problem.aims.truncate(depth.aims());
    model.problem.is_without_why = depth != Depth::Full;
    let plan = match engine.solve(&model.problem, watch) {
        Outcome::Found(plan) => plan,
        Outcome::Impossible => return Err(Refusal::Impossible),
        Outcome::Stopped => return Err(Refusal::Stopped),
    };
    let is_done = |job: usize| matches!(progress[job], Progress::Done(_));
    let is_going = |job: usize| matches!(progress[job], Progress::Begun(_));
    let (entries, left) = (entries(&model, (&dishes, &jobs, &is_going), &plan, &clock), left(&model, aways, &plan, &clock));
    let (unmet, conflicts) = (unmet(&model, &plan), conflicts(&model, &plan, &clock));
    let entries = entries.into_iter().filter(|entry| !is_done(entry.job)).collect();
    let served = clock.moment(plan.begins[model.serving]);
    let wanted = wanted.serve.clone();
    Ok(Timeline {
        place,
        dishes,
        jobs,
        follows,
        stays,
        learnt,
        fixed,
        entries,
        wanted,
        served,
        left,
        unmet,
        conflicts,
        is_why_cut_short: plan.is_why_cut_short,
        relief: Vec::new(),
        reached: plan.reached,
    })
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

fn entries(
    model: &Model,
    (dishes, jobs, is_going): (&[Dish], &[Job], &dyn Fn(usize) -> bool),
    plan: &Plan,
    clock: &Clock,
) -> Vec<Entry> {
    let Problem { tasks, links, .. } = &model.problem;
    let end = |task: usize| plan.begins[task] + tasks[task].lasts;
    let mut order: Vec<usize> = (0..jobs.len()).collect();
    order.sort_by_key(|job| (plan.begins[*job], end(*job), *job));
    let entry = |job: usize| {
        let after = links.iter().filter(|link| link.before == job).map(|link| plan.begins[link.after]);
        let needed = after.min().unwrap_or(end(job)).max(end(job));
        let is_held = jobs[job].is_held(dishes);
        Entry {
            job,
            begin: clock.moment(plan.begins[job]),
            end: clock.moment(if is_held { needed } else { end(job) }),
            needed: clock.moment(needed),
            is_set_going: links.iter().any(|link| link.after == job && link.before > model.serving),
            is_going: is_going(job),
        }
    };
    order.into_iter().map(entry).collect()
}

fn left(model: &Model, aways: Vec<Away>, plan: &Plan, clock: &Clock) -> Vec<Left> {
    let serving = clock.moment(plan.begins[model.serving]);
    let first = clock.moment(plan.begins.iter().copied().min().unwrap_or(0));
    let kept = |at: usize| {
        let wish = model.wants.iter().position(|want| *want == Want::Left(at))?;
        kept(model, wish, &plan.begins, clock)
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

/// What is left of a time in which nobody is at hand, or when a fixed step goes on: from when to when.
fn kept(model: &Model, wish: usize, begins: &[Slot], clock: &Clock) -> Option<(ZonedDateTime, ZonedDateTime)> {
    if let Wish::Begins { task, .. } = model.problem.wishes[wish] {
        return Some((clock.moment(begins[task]), clock.moment(begins[task] + model.problem.tasks[task].lasts)));
    }
    let (from, to) = model.problem.rest(&model.problem.wishes[wish], begins)?;
    (to > from).then(|| (clock.moment(from), clock.moment(to)))
}

fn conflicts(model: &Model, plan: &Plan, clock: &Clock) -> Vec<Vec<Against>> {
    let one = |(wish, alone): &(usize, Option<Alone>)| {
        let want = model.wants[*wish];
        Against {
            want,
            alone: alone.as_ref().map(|alone| HowFar::of(want, alone.by)),
            kept: alone.as_ref().and_then(|alone| kept(model, *wish, &alone.begins, clock)),
        }
    };
    plan.conflicts.iter().map(|conflict| conflict.wishes.iter().map(one).collect()).collect()
}
