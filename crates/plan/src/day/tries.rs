//! A timeline tried in a thousand kitchens: how often it is served in time, and where there is slack.
//!
//! Each try draws how long every job takes, between early and late and most likely the likely time (a triangle: an
//! assumption); a quick or slow kitchen is so for everything in it that rises. Jobs keep their planned order and
//! begin when planned, or as soon after as what they need is there. Times that a baker chooses within a window, such
//! as a retard or a rest, do not vary. Where too little room is left, nothing waits for it: it is only counted.

use super::job::{Job, bake_together};
use super::model::Want;
use super::stays::{Space, Stay, Until};
use super::timeline::Timeline;
use super::workplace::Station;
use crate::day::Told;
use formula::read::{Action, Condition};
use jiff::ZonedDateTime;
use quantity::TimeSpan;

/// What came of the tries.
#[derive(Clone, Debug, PartialEq)]
pub struct Tries {
    /// How many kitchens.
    pub kitchens: usize,
    /// In how many of them everything is on the table no later than ten minutes after the planned time.
    pub in_time: usize,
    /// How late it is in the middle of all kitchens, and what one in twenty exceeds.
    pub late: (TimeSpan, TimeSpan),
    /// In how many of them something waits longer than it is at its best.
    pub past_best: usize,
    /// In how many of them there is less room in bowls, fridge or oven than was planned with, for a while.
    pub crowded: usize,
    /// By how much each job may be late before serving is, by its number.
    pub slack: Vec<TimeSpan>,
}

/// Late is what comes more than so long after the planned time.
const IN_TIME: f64 = 10.0;
/// What a wait is over by on the grid alone is not told, in minutes.
const GRID: f64 = 5.0;
/// What setting something going takes of a pair of hands, in minutes.
const SETTING_GOING: f64 = 5.0;

/// Tries a timeline in so many kitchens; the same timeline gives the same answer.
#[must_use]
pub fn tries(timeline: &Timeline, kitchens: usize) -> Tries {
    let plan = Planned::of(timeline);
    let mut dice = Dice(0x5EED);
    let runs: Vec<Run> = (0..kitchens).map(|_| plan.run(&plan.draw(&mut dice))).collect();
    let mut late: Vec<f64> = runs.iter().map(|run| (run.served - plan.served).max(0.0)).collect();
    late.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let place = (share * kitchens.saturating_sub(1) as f64).round() as usize;
        TimeSpan::minutes(late.get(place).copied().unwrap_or(0.0))
    };
    Tries {
        kitchens,
        in_time: late.iter().filter(|late| **late <= IN_TIME).count(),
        late: (at(0.5), at(0.95)),
        past_best: runs.iter().filter(|run| run.is_past_best).count(),
        crowded: runs.iter().filter(|run| run.is_crowded).count(),
        slack: plan.slack().into_iter().map(TimeSpan::minutes).collect(),
    }
}

/// How one kitchen fares.
struct Run {
    /// When everything is on the table, in minutes.
    served: f64,
    /// Whether something waited longer than it is at its best.
    is_past_best: bool,
    /// Whether more room was missing than planned.
    is_crowded: bool,
}

/// A timeline in minutes from its first job.
struct Planned<'p> {
    timeline: &'p Timeline,
    /// When each job begins and ends, by its number.
    times: Vec<(f64, f64)>,
    /// The jobs in order of time.
    order: Vec<usize>,
    is_set_going: Vec<bool>,
    served: f64,
    rooms: Vec<Room<'p>>,
}

/// What stands in something, and how much may.
struct Room<'p> {
    stays: Vec<&'p Stay>,
    /// What there is, and what is missing already as planned.
    most: i32,
}

impl<'p> Room<'p> {
    /// All of them.
    fn of(timeline: &'p Timeline) -> Vec<Self> {
        let place = &timeline.place;
        let spaces = Space::ALL.into_iter().map(|space| (Want::Room(space), space, 0, place.room(space)));
        let sizes = (1..place.bowl_sizes.len()).map(|size| (Want::Large(size), Space::Bowls, size, place.bowls_from(size)));
        let missing =
            |want: Want| timeline.unmet.iter().find(|unmet| unmet.want == want).map_or(0, |unmet| unmet.gives_way.room());
        let room = |(want, space, size, there): (Want, Space, usize, i32)| Self {
            stays: timeline.stays.iter().filter(|stay| stay.space == space && stay.size >= size).collect(),
            most: there.saturating_add(missing(want)),
        };
        spaces.chain(sizes).map(room).filter(|room| !room.stays.is_empty()).collect()
    }
}

impl<'p> Planned<'p> {
    fn of(timeline: &'p Timeline) -> Self {
        let first = timeline.entries.first().map_or(&timeline.served, |entry| &entry.begin);
        let minutes = |moment: &ZonedDateTime| moment.timestamp().duration_since(first.timestamp()).as_secs_f64() / 60.0;
        let (mut times, mut is_set_going) = (vec![(0.0, 0.0); timeline.jobs.len()], vec![false; timeline.jobs.len()]);
        for entry in &timeline.entries {
            let job = &timeline.jobs[entry.job];
            let begin = minutes(&entry.begin);
            let is_held = job.is_held(&timeline.dishes);
            // What is held may be needed at any moment.
            times[entry.job] = (begin, if is_held { begin + job.span.likely.as_minutes() } else { minutes(&entry.end) });
            is_set_going[entry.job] = entry.is_set_going;
        }
        let order = timeline.entries.iter().map(|entry| entry.job).collect();
        Self { timeline, times, order, is_set_going, served: minutes(&timeline.served), rooms: Room::of(timeline) }
    }

    /// How long each job takes in one kitchen, in minutes.
    fn draw(&self, dice: &mut Dice) -> Vec<f64> {
        let kitchen = dice.next();
        let jobs = self.timeline.jobs.iter();
        jobs.map(|job| {
            let own = dice.next();
            let share = if job.span.from == Told::Foreseen { kitchen } else { own };
            if self.varies(job) { triangle(job, share) } else { job.span.likely.as_minutes() }
        })
        .collect()
    }

    fn varies(&self, job: &Job) -> bool {
        let step = &self.timeline.dishes[job.dish].formula.stage(job.at).steps[job.step];
        let is_chosen = matches!(
            step.action,
            Action::Ferment | Action::Retard | Action::Rest | Action::Chill | Action::Hold | Action::Soak | Action::Store
        );
        let is_risen = step.action == Action::Ferment && matches!(step.until, Some(Condition::RisenBy(_)));
        job.is_step() && (!is_chosen || is_risen)
    }

    /// How it goes if jobs take so long.
    fn run(&self, lasts: &[f64]) -> Run {
        let (mut begins, mut ends): (Vec<f64>, Vec<f64>) = self.times.iter().copied().unzip();
        let mut free: Vec<(Station, Vec<f64>)> = Station::ALL
            .into_iter()
            .map(|station| (station, vec![0.0; usize::try_from(self.timeline.place.capacity(station)).unwrap_or(1)]))
            .collect();
        for (at, &job) in self.order.iter().enumerate() {
            let before = self.timeline.follows.iter().filter(|one| one.after == Some(job)).map(|one| ends[one.before]);
            let cooled = self.order[..at].iter().filter(|other| self.keeps_out(**other, job)).map(|other| ends[*other]);
            let mut begin = before.chain(cooled).fold(self.times[job].0, f64::max);
            for (station, places) in &mut free {
                let Some(last) = self.needs(job, *station).checked_sub(1) else { continue };
                places.sort_by(f64::total_cmp);
                begin = places.get(last).map_or(begin, |free| begin.max(*free));
            }
            begins[job] = begin;
            ends[job] = begin + lasts[job];
            for (station, places) in &mut free {
                let is_held = *station != Station::Hands || self.timeline.jobs[job].is_work;
                let until = if is_held { ends[job] } else { begin + SETTING_GOING };
                places.iter_mut().take(self.needs(job, *station)).for_each(|place| *place = until);
            }
        }
        let last = self.timeline.follows.iter().filter(|one| one.after.is_none()).map(|one| ends[one.before]);
        let served = last.fold(self.served, f64::max);
        let is_past_best = self.timeline.follows.iter().any(|one| {
            let wait = one.after.map_or(served, |after| begins[after]) - ends[one.before];
            one.most.is_some_and(|most| !one.is_strict && wait > most.as_minutes() + GRID)
        });
        Run { served, is_past_best, is_crowded: self.is_crowded((&begins, &ends), served) }
    }

    /// Whether there is more in bowls, fridge or oven at a moment than there is room for, and than was planned.
    fn is_crowded(&self, (begins, ends): (&[f64], &[f64]), served: f64) -> bool {
        let over = |until: &Until| match *until {
            Until::Begins(job) => begins[job],
            Until::Done(job) => ends[job],
            Until::Served => served,
        };
        self.rooms.iter().any(|room| {
            let span = |stay: &&Stay| (begins[stay.from], stay.until.iter().map(over).fold(f64::MIN, f64::max), stay.amount);
            let spans: Vec<(f64, f64, i32)> = room.stays.iter().map(span).collect();
            let taken =
                |now: f64| -> i32 { spans.iter().filter(|(from, to, _)| *from <= now && now < *to).map(|(.., of)| of).sum() };
            spans.iter().any(|(from, ..)| taken(*from) > room.most)
        })
    }

    fn needs(&self, job: usize, station: Station) -> usize {
        let is_started = station == Station::Hands && self.is_set_going[job];
        usize::try_from(self.timeline.jobs[job].needs(station)).unwrap_or(0).max(usize::from(is_started))
    }

    /// Whether an earlier job keeps a later one out of the oven or the proofer until it is done, because they ask for
    /// other heats.
    fn keeps_out(&self, earlier: usize, later: usize) -> bool {
        let (jobs, dishes) = (&self.timeline.jobs, &self.timeline.dishes);
        let are_in = |station: Station| [earlier, later].iter().all(|job| jobs[*job].stations.contains(&station));
        (are_in(Station::Oven) || are_in(Station::Proofer)) && !bake_together(dishes, &jobs[earlier], &jobs[later])
    }

    /// By how many minutes each job may end late before serving is late.
    fn slack(&self) -> Vec<f64> {
        let mut slack = vec![f64::INFINITY; self.times.len()];
        for (place, &job) in self.order.iter().enumerate().rev() {
            let end = self.times[job].1;
            let mut least = f64::INFINITY;
            for one in self.timeline.follows.iter().filter(|one| one.before == job) {
                least = least.min(match one.after {
                    None => self.served - end,
                    Some(after) => self.times[after].0 - end + slack[after],
                });
            }
            for station in Station::ALL.into_iter().filter(|station| self.needs(job, *station) > 0) {
                let is_held = station != Station::Hands || self.timeline.jobs[job].is_work;
                let free = if is_held { end } else { self.times[job].0 + SETTING_GOING };
                // The first later job for which there is no place until this one has left its own.
                let mut taken = self.needs(job, station);
                let capacity = usize::try_from(self.timeline.place.capacity(station)).unwrap_or(1);
                let next = self.order[place + 1..].iter().find(|other| {
                    let needs = self.needs(**other, station);
                    taken += needs;
                    needs > 0 && taken > capacity
                });
                if let Some(&other) = next {
                    least = least.min((self.times[other].0 - free).max(0.0) + slack[other]);
                }
            }
            if let Some(&other) = self.order[place + 1..].iter().find(|other| self.keeps_out(job, **other)) {
                least = least.min((self.times[other].0 - end).max(0.0) + slack[other]);
            }
            slack[job] = least.max(0.0);
        }
        slack
    }
}

/// The time at a share of the triangle between early, likely and late.
fn triangle(job: &Job, share: f64) -> f64 {
    let (a, c, b) = (job.span.early.as_minutes(), job.span.likely.as_minutes(), job.span.late.as_minutes());
    if b <= a {
        return c;
    }
    let peak = (c - a) / (b - a);
    if share < peak { a + ((b - a) * (c - a) * share).sqrt() } else { b - ((b - a) * (b - c) * (1.0 - share)).sqrt() }
}

/// Random numbers from 0 to 1: SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators",
/// OOPSLA 2014).
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }
}
