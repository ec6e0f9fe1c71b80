//! A day's jobs as a problem on the grid.

use super::clock::{Away, Clock, Why, slots_for, slots_within};
use super::fixed::Fixed;
use super::happened::Progress;
use super::job::{Dish, Job, bake_together};
use super::order::{Follows, heats};
use super::stays::{Space, Stay, Until};
use super::workplace::{Station, Workplace};
use crate::problem::{self, Aim, Edge, Link, Measure, Problem, Resource, Slot, Task, Wish};
use formula::Step;
use formula::read::{Action, StageKind};
use quantity::TimeSpan;

/// What a wish of the problem stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Want {
    /// A step begins when it is fixed to, by its place among what is fixed.
    Fixed(usize),
    /// Everything on the table at the time asked for.
    Served,
    /// A time in which nobody is at hand, by its place among them.
    Left(usize),
    /// There are bowls, or room in the fridge, for all that stands there.
    Room(Space),
    /// There are bowls of a size or larger for what needs them, by the place of the size in the kitchen.
    Large(usize),
    /// What a job made is used while it is at its best, by the place among what follows what.
    AtItsBest(usize),
}

/// A problem with what its parts stand for. Tasks are the jobs, then serving, then what sets jobs going.
pub struct Model {
    /// The problem.
    pub problem: Problem,
    /// What each wish stands for.
    pub wants: Vec<Want>,
    /// The task that is serving.
    pub serving: usize,
}

/// The figures of the grid.
#[derive(Clone, Copy, Debug)]
pub struct Frame {
    /// When serving is wanted.
    pub serve: Slot,
    /// Nothing begins before.
    pub earliest: Slot,
    /// Everything has ended.
    pub end: Slot,
}

/// How long before serving the kitchen should be quiet but for what must be fresh: common practice, no source.
const QUIET: Slot = 48;

/// Bread that rests so long before it is cut is not the better for being late.
const LONG_REST: TimeSpan = TimeSpan::hours(8.0);
/// What a day is made of.
#[derive(Clone, Copy)]
pub struct Parts<'p> {
    /// What is made.
    pub dishes: &'p [Dish],
    /// Its jobs.
    pub jobs: &'p [Job],
    /// What follows what.
    pub follows: &'p [Follows],
    /// What stands in bowls and in the fridge.
    pub stays: &'p [Stay],
    /// The kitchen.
    pub place: &'p Workplace,
    /// When nobody is at hand.
    pub aways: &'p [Away],
    /// How far each job has come.
    pub progress: &'p [Progress],
    /// Which jobs are fixed.
    pub fixed: &'p [Fixed],
}

/// Sets the problem up.
#[must_use]
pub fn model(parts: Parts, clock: &Clock, frame: Frame) -> Model {
    let Parts { jobs, follows, aways, progress, .. } = parts;
    let task = |lasts: Slot| Task { lasts, earliest: frame.earliest, latest: frame.end };
    let mut problem = Problem { end: frame.end, ..Problem::default() };
    let fixed = |lasts: Slot, at: Slot| Task { lasts, earliest: at, latest: at };
    problem.tasks = jobs
        .iter()
        .zip(progress)
        .map(|(job, progress)| match progress {
            Progress::Open => task(slots_for(job.span.likely)),
            Progress::Begun(when) => {
                // What is not told to be done goes on at least until now.
                let begun = clock.slot_before(when.timestamp());
                fixed(slots_for(job.span.likely).max(frame.earliest - begun), begun)
            }
            Progress::Done(when) => fixed(0, clock.slot_before(when.timestamp())),
        })
        .collect();
    let serving = problem.tasks.len();
    // Nobody is served before the time that was asked for.
    problem.tasks.push(Task { earliest: frame.serve, ..task(0) });
    let mut model = Model { problem, wants: Vec::new(), serving };
    model.follow(follows);
    let starts = model.set_going(parts, task(1));
    model.share(parts, &starts);
    model.stand(parts);
    let somebody: Vec<usize> = (0..jobs.len()).filter(|job| jobs[*job].wants_somebody()).chain(starts.iter().copied()).collect();
    for (at, away) in aways.iter().enumerate() {
        let (from, to) = (clock.slot_before(away.from.timestamp()).max(0), clock.slot_after(away.to.timestamp()).min(frame.end));
        if from < to {
            model.wish(Want::Left(at), Wish::Undisturbed { tasks: somebody.clone(), from, to });
        }
    }
    for (at, one) in parts.fixed.iter().enumerate().filter(|(_, one)| !one.has_happened) {
        let (from, to) = one.fix.window(clock);
        model.wish(Want::Fixed(at), Wish::Begins { task: one.job, from, to });
    }
    model.wish(Want::Served, Wish::EndsBy { task: serving, by: frame.serve });
    model.problem.aims = aims(&model, parts, frame);
    model
}

impl Model {
    fn wish(&mut self, want: Want, wish: Wish) {
        self.wants.push(want);
        self.problem.wishes.push(wish);
    }

    fn follow(&mut self, follows: &[Follows]) {
        for (at, one) in follows.iter().enumerate() {
            let (before, after) = (one.before, one.after.unwrap_or(self.serving));
            let most = one.most.map(slots_within);
            self.problem.links.push(Link { before, after, least: 0, most: most.filter(|_| one.is_strict) });
            if let Some(most) = most.filter(|_| !one.is_strict) {
                self.wish(Want::AtItsBest(at), Wish::Soon { before, after, most });
            }
        }
    }

    /// A job that goes on by itself has to be set going, unless the work before it does that.
    fn set_going(&mut self, parts: Parts, start: Task) -> Vec<usize> {
        let Parts { jobs, follows, progress, .. } = parts;
        let mut starts = Vec::new();
        for (at, job) in jobs.iter().enumerate() {
            let goes_on = follows.iter().any(|one| one.after == Some(at) && one.is_strict && jobs[one.before].is_work);
            let takes_time = self.problem.tasks[at].lasts > 0;
            if !job.is_work && !goes_on && takes_time && progress[at] == Progress::Open {
                let touch = self.problem.tasks.len();
                self.problem.tasks.push(start);
                self.problem.links.push(Link { before: touch, after: at, least: -1, most: Some(-1) });
                starts.push(touch);
            }
        }
        starts
    }

    fn share(&mut self, parts: Parts, starts: &[usize]) {
        let Parts { dishes, jobs, place, .. } = parts;
        for station in Station::ALL {
            let mut uses: Vec<(usize, i32)> = (0..jobs.len()).map(|job| (job, jobs[job].needs(station))).collect();
            uses.retain(|(_, amount)| *amount > 0);
            if station == Station::Hands {
                uses.extend(starts.iter().map(|start| (*start, 1)));
            }
            if uses.len() > 1 {
                self.problem.resources.push(Resource { capacity: place.capacity(station), uses });
            }
        }
        // The oven is as hot as one job asks: those that ask for other heats keep each other out.
        // The same holds for the proofer.
        for apart in [Station::Oven, Station::Proofer].into_iter().flat_map(|station| kept_apart(dishes, jobs, station)) {
            self.problem.resources.push(Resource { capacity: 1, uses: apart.into_iter().map(|job| (job, 1)).collect() });
        }
    }

    fn stand(&mut self, parts: Parts) {
        let serving = self.serving;
        let edge = |until: &Until| match *until {
            Until::Begins(job) => Edge::Begin(job),
            Until::Done(job) => Edge::End(job),
            Until::Served => Edge::Begin(serving),
        };
        let put =
            |stay: &Stay| problem::Stay { from: stay.from, until: stay.until.iter().map(edge).collect(), amount: stay.amount };
        for space in Space::ALL {
            let stays = parts.stays.iter().filter(|stay| stay.space == space).map(put);
            self.find_room(Want::Room(space), parts.place.room(space), stays.collect());
        }
        // What fits into a small bowl may stand in a large one, and be tipped into another when that is needed.
        for size in 1..parts.place.bowl_sizes.len() {
            let large = parts.stays.iter().filter(|stay| stay.space == Space::Bowls && stay.size >= size).map(put);
            self.find_room(Want::Large(size), parts.place.bowls_from(size), large.collect());
        }
    }

    /// A wish for room, where not everything would have it at once.
    fn find_room(&mut self, want: Want, capacity: i32, stays: Vec<problem::Stay>) {
        if stays.iter().map(|stay| i64::from(stay.amount)).sum::<i64>() > i64::from(capacity) {
            self.wish(want, Wish::Room { capacity, stays });
        }
    }
}

/// Groups of jobs in the oven or the proofer of which no two can go on at once, so that every such pair is in one of them.
fn kept_apart(dishes: &[Dish], jobs: &[Job], station: Station) -> Vec<Vec<usize>> {
    let hot: Vec<usize> = (0..jobs.len()).filter(|job| jobs[*job].stations.contains(&station)).collect();
    let is_apart = |one: usize, other: usize| !bake_together(dishes, &jobs[one], &jobs[other]);
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (at, &one) in hot.iter().enumerate() {
        for &other in hot[at + 1..].iter().filter(|other| is_apart(one, **other)) {
            if groups.iter().any(|group| group.contains(&one) && group.contains(&other)) {
                continue;
            }
            let mut group = vec![one, other];
            for &more in &hot {
                if group.iter().all(|job| *job != more && is_apart(*job, more)) {
                    group.push(more);
                }
            }
            groups.push(group);
        }
    }
    groups
}

/// What makes one day better than another, the weightiest first.
pub const AIMS: [&str; 10] = [
    "as fixed",
    "on time",
    "room for everything",
    "nothing past its best",
    "out when wished",
    "asleep at night",
    "fresh at serving",
    "unhurried",
    "waiting where it keeps",
    "close together",
];

/// The place of freshness among them.
pub const FRESH: usize = 6;

/// As fixed, on time, room for everything, nothing past its best, at hand when out, asleep at night, fresh, unhurried, waiting where it keeps, close.
fn aims(model: &Model, parts: Parts, frame: Frame) -> Vec<Aim> {
    let Parts { dishes, jobs, follows, aways, .. } = parts;
    let gives_way = |is_meant: &dyn Fn(&Want) -> bool| -> Aim {
        (0..model.wants.len()).filter(|at| is_meant(&model.wants[*at])).map(|at| (1, Measure::GivesWay(at))).collect()
    };
    let because = |why: Why| move |want: &Want| matches!(want, Want::Left(at) if aways[*at].why == why);
    let mut fresh = Aim::new();
    let mut unhurried = Aim::new();
    for one in follows.iter().filter(|one| one.after.is_none()) {
        let weight = freshness(dishes, &jobs[one.before]);
        if weight > 0 {
            fresh.push((weight, Measure::Wait(from_the_heat(dishes, jobs, one.before), model.serving)));
        }
    }
    for (at, job) in jobs.iter().enumerate().filter(|(_, job)| job.is_work && component_freshness(dishes, job) == 0) {
        let is_last = dishes[job.dish].formula.stage(job.at).steps[job.step].action == Action::Serve;
        if !is_last {
            unhurried.push((1, Measure::Beyond(at, frame.serve - QUIET)));
        }
    }
    let waits = follows.iter().filter_map(|one| {
        let weight = haste(one.most?).filter(|_| !one.is_strict)?;
        Some((weight, Measure::Wait(one.before, one.after.unwrap_or(model.serving))))
    });
    let waits = waits.collect();
    let close = (0..jobs.len()).flat_map(|at| [(1, Measure::Begin(model.serving)), (-1, Measure::Begin(at))]).collect();
    vec![
        gives_way(&|want| matches!(want, Want::Fixed(_))),
        gives_way(&|want| *want == Want::Served),
        gives_way(&|want| matches!(want, Want::Room(_) | Want::Large(_))),
        gives_way(&|want| matches!(want, Want::AtItsBest(_))),
        gives_way(&because(Why::Out)),
        gives_way(&because(Why::Asleep)),
        fresh,
        unhurried,
        waits,
        close,
    ]
}

/// How much a wait costs of what keeps so long: the sooner it is past its best, the more; what keeps for more than a
/// day nothing. Common practice, no source.
fn haste(keeps: TimeSpan) -> Option<i32> {
    let classes = [(TimeSpan::hours(1.0), 8), (TimeSpan::hours(6.0), 3), (TimeSpan::hours(24.0), 1)];
    classes.into_iter().find(|(most, _)| keeps <= *most).map(|(_, weight)| weight)
}

/// How much it matters that the last job of a component is close to serving.
fn freshness(dishes: &[Dish], last: &Job) -> i32 {
    if dishes[last.dish].is_served { component_freshness(dishes, last) } else { 0 }
}

/// The last job of a component that cooks it, from which on it is no longer quite fresh; the last of all if none does.
fn from_the_heat(dishes: &[Dish], jobs: &[Job], last: usize) -> usize {
    let is_same = |job: &Job| job.dish == jobs[last].dish && job.at.0 == jobs[last].at.0 && job.is_step();
    let action = |job: &Job| dishes[job.dish].formula.stage(job.at).steps[job.step].action;
    let cooks = |job: &Job| is_same(job) && heats(action(job));
    jobs.iter().rposition(cooks).unwrap_or(last)
}

/// Hot bread most, whipped cream some, what keeps for days not at all: common practice, no source.
fn component_freshness(dishes: &[Dish], job: &Job) -> i32 {
    let component = &dishes[job.dish].formula.components[job.at.0];
    let steps: Vec<&Step> = component.stages.iter().flat_map(|stage| &stage.steps).collect();
    let is_hot = |step: &&Step| matches!(step.action, Action::Fry | Action::Griddle | Action::Bake);
    if let Some(baked) = steps.iter().rposition(is_hot) {
        // What has to rest for most of a day is not for eating fresh.
        let rests = steps[baked..].iter().filter_map(|step| step.time).any(|time| time.from >= LONG_REST);
        if rests { 0 } else { 2 }
    } else {
        i32::from(component.stages.last().is_some_and(|stage| stage.kind == StageKind::Creamed))
    }
}
