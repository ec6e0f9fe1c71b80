//! What things stand in between jobs: bowls, and room in the fridge.

use super::job::{Dish, Job, names};
use super::order::Follows;
use super::workplace::{Station, Workplace};
use bench::forecast::{Surroundings, bowl_room, fridge_room};
use formula::Stage;
use formula::read::{Action, StageKind};
use formula::resolve::formula::StageAt;
use quantity::Volume;
use std::collections::BTreeMap;

/// What things stand in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Space {
    /// Bowls and tubs.
    Bowls,
    /// The fridge, in steps of a decilitre.
    Fridge,
    /// The oven where something is held warm in it, in hundredths of a deck.
    Oven,
}

impl Space {
    /// All of them, in the order in which they are listed.
    pub const ALL: [Self; 3] = [Self::Bowls, Self::Fridge, Self::Oven];
}

/// What stands somewhere from the beginning of a job until others have come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stay {
    /// In what.
    pub space: Space,
    /// The job with which it begins.
    pub from: usize,
    /// It is over when all of these have come; at least one.
    pub until: Vec<Until>,
    /// How many bowls, decilitres, or hundredths of a deck.
    pub amount: i32,
    /// The smallest bowls that are large enough, by their place among the kitchen's sizes; the smallest of all where
    /// bowls are only counted.
    pub size: usize,
}

/// What a stay waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Until {
    /// A job begins.
    Begins(usize),
    /// A job is done.
    Done(usize),
    /// Everything is on the table.
    Served,
}

/// How many decilitres a volume is, rounded up.
pub fn decilitres(volume: Volume) -> i32 {
    (volume.as_millilitres() / 100.0 - 1e-9).ceil().clamp(0.0, 1e6) as i32
}

/// Every stay of a day.
#[must_use]
pub fn stays(dishes: &[Dish], jobs: &[Job], follows: &[Follows], place: &Workplace, around: &Surroundings) -> Vec<Stay> {
    let mut found = Vec::new();
    for (d, dish) in dishes.iter().enumerate() {
        for at in &dish.stages {
            let own: Vec<usize> = (0..jobs.len()).filter(|job| is_of(&jobs[*job], d, *at)).collect();
            let stage = dish.formula.stage(*at);
            let bowl = bowl(stage, &own, jobs, follows);
            let needs = || bowl_room(&dish.formula, *at, &dish.rises);
            found.extend(bowl.into_iter().flat_map(|bowl| large_enough(bowl, needs(), place)));
            let cold = own.iter().filter(|job| around.is_in_fridge(&stage.steps[jobs[**job].step]));
            found.extend(cold.map(|job| Stay {
                space: Space::Fridge,
                from: *job,
                until: after(*job, follows, Until::Begins),
                amount: decilitres(fridge_room(&dish.formula, *at, &dish.rises)),
                size: 0,
            }));
        }
    }
    found.extend(warm_oven(dishes, jobs, follows, place));
    found
}

/// What is held warm in the oven has it alone for as long as it is held.
fn warm_oven(dishes: &[Dish], jobs: &[Job], follows: &[Follows], place: &Workplace) -> Vec<Stay> {
    let step = |job: &Job| &dishes[job.dish].formula.stage(job.at).steps[job.step];
    let is_held = |job: &Job| step(job).action == Action::Hold && names(step(job), "oven");
    if !jobs.iter().any(is_held) {
        return Vec::new();
    }
    let stay = |(at, job): (usize, &Job)| {
        let (amount, until) = if is_held(job) {
            (place.capacity(Station::Oven), after(at, follows, Until::Begins))
        } else {
            (job.decks.max(1), vec![Until::Done(at)])
        };
        let is_there = is_held(job) || job.stations.contains(&Station::Oven);
        is_there.then_some(Stay { space: Space::Oven, from: at, until, amount, size: 0 })
    };
    jobs.iter().enumerate().filter_map(stay).collect()
}

fn is_of(job: &Job, dish: usize, at: StageAt) -> bool {
    job.dish == dish && job.at == at && job.is_step()
}

/// What ends a stay after a job: all that follows it, or else its own end.
fn after(job: usize, follows: &[Follows], taken: impl Fn(usize) -> Until) -> Vec<Until> {
    let next = follows.iter().filter(|one| one.before == job).map(|one| one.after.map_or(Until::Served, &taken));
    let next: Vec<Until> = next.collect();
    if next.is_empty() { vec![Until::Done(job)] } else { next }
}

/// The bowl of a stage that is mixed in one: from the first job that does not stand on the heat until what is in it has
/// been taken, or laid on a tray.
fn bowl(stage: &Stage, own: &[usize], jobs: &[Job], follows: &[Follows]) -> Option<Stay> {
    if matches!(stage.kind, StageKind::Cooked | StageKind::MakeUp) {
        return None;
    }
    let from = own.iter().copied().find(|job| !jobs[*job].stations.contains(&Station::Ring))?;
    let is_laid_out = |job: &&usize| **job > from && stage.steps[jobs[**job].step].equipment.iter().any(|name| names_tray(name));
    let until = match own.iter().find(is_laid_out) {
        Some(laid) => vec![Until::Begins(*laid)],
        None => after(*own.last()?, follows, Until::Done),
    };
    Some(Stay { space: Space::Bowls, from, until, amount: 1, size: 0 })
}

/// The bowl as large as what rises in it needs; what is too much for the largest is parted among several.
fn large_enough(bowl: Stay, needs: Volume, place: &Workplace) -> Vec<Stay> {
    let sizes = &place.bowl_sizes;
    if sizes.is_empty() {
        return vec![bowl];
    }
    let fitting = |rest: Volume| sizes.iter().position(|(holds, _)| *holds >= rest);
    let mut parts: BTreeMap<usize, i32> = BTreeMap::new();
    let mut rest = needs;
    // The largest first, each as often as there is one; what is then left over is missing in the largest.
    let there = sizes.iter().enumerate().rev().flat_map(|(size, (_, count))| (0..*count).map(move |_| size));
    for largest in there.chain(std::iter::repeat(sizes.len() - 1)).take(MOST_PARTS) {
        let size = fitting(rest).unwrap_or(largest);
        *parts.entry(size).or_default() += 1;
        rest = rest - sizes[size].0;
        if rest <= Volume::ZERO {
            break;
        }
    }
    parts.into_iter().map(|(size, amount)| Stay { size, amount, ..bowl.clone() }).collect()
}

/// Nobody parts a dough further.
const MOST_PARTS: usize = 100;

fn names_tray(name: &str) -> bool {
    name.split(|c: char| !c.is_alphabetic()).any(|word| matches!(word, "tray" | "trays" | "tin" | "tins" | "rings"))
}
