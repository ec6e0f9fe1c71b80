//! When each step begins, counted back from serving, with the times that are foreseen in a kitchen; hands,
//! rings and sleep are the day's work, not this one's.

use bench::forecast::{Foreseen, Rise};
use formula::resolve::formula::StageAt;
use formula::{Formula, Step};
use quantity::{Between, TimeSpan};
use std::collections::BTreeMap;

/// A step by the clock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Counted {
    /// The stage it stands in.
    pub at: StageAt,
    /// Which of the stage's steps it is.
    pub step: usize,
    /// When it begins, counted from serving; before it, negative.
    pub begins: TimeSpan,
    /// How long it takes, all batches together.
    pub lasts: TimeSpan,
    /// From when to when its condition is met, from its beginning, where that is foreseen.
    pub foreseen: Option<Expected>,
}

/// What is foreseen of a waiting step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// The range to tell: of a rise its band; of ripeness what it has in common with the stated time, or else all of it.
    pub range: Between<TimeSpan>,
    /// What a plan goes by: of a rise its own time, of ripeness the middle of the range.
    pub planned: TimeSpan,
}

/// What to expect of a waiting step; none where it states no condition that can be foreseen.
#[must_use]
pub fn expected(step: &Foreseen) -> Option<Expected> {
    let reached = step.reached.as_ref()?;
    let (from, to) = (reached.from.value, reached.to.value);
    if reached.from == reached.to {
        let (low, high) = reached.from.band.unwrap_or((from, to));
        return Some(Expected { range: Between { from: low, to: high }, planned: from });
    }
    let stated = step.stated.unwrap_or(Between { from, to });
    let both = Between { from: from.max(stated.from), to: to.min(stated.to) };
    let range = if both.from <= both.to { both } else { Between { from, to } };
    Some(Expected { range, planned: middle(range) })
}

/// Every step of a formula by the clock, in working order. Stages that do not need each other go on side by side, each
/// as late as it may.
#[must_use]
pub fn countdown(formula: &Formula, rises: &[Rise]) -> Vec<Counted> {
    let foreseen = |step: &Step| {
        let steps = rises.iter().flat_map(|rise| &rise.steps);
        steps.filter(|one| one.place == step.place).find_map(expected)
    };
    let mut timed: BTreeMap<StageAt, Vec<(TimeSpan, Option<Expected>)>> = BTreeMap::new();
    for (at, stage) in formula.stages() {
        let pieces = formula.components[at.0].yields.pieces;
        let times = stage.steps.iter().map(|step| {
            let foreseen = foreseen(step);
            let once = foreseen.map(|one| one.planned).or_else(|| step.time.map(middle)).unwrap_or(TimeSpan::ZERO);
            (once * step.batches(pieces), foreseen)
        });
        timed.insert(at, times.collect());
    }
    let ends = ends(formula, &timed);
    let mut all = Vec::new();
    for (at, steps) in &timed {
        let whole: TimeSpan = steps.iter().map(|(lasts, _)| *lasts).sum();
        let mut begins = ends.get(at).copied().unwrap_or(TimeSpan::ZERO) - whole;
        for (step, (lasts, foreseen)) in steps.iter().enumerate() {
            all.push(Counted { at: *at, step, begins, lasts: *lasts, foreseen: *foreseen });
            begins += *lasts;
        }
    }
    all
}

/// When each stage must be done: when the first of those begins that use it.
fn ends(formula: &Formula, timed: &BTreeMap<StageAt, Vec<(TimeSpan, Option<Expected>)>>) -> BTreeMap<StageAt, TimeSpan> {
    let mut users: BTreeMap<StageAt, Vec<StageAt>> = BTreeMap::new();
    for (at, stage) in formula.stages() {
        for used in stage.uses() {
            users.entry(used).or_default().push(at);
        }
    }
    let lasts = |at: &StageAt| -> TimeSpan { timed.get(at).into_iter().flatten().map(|(lasts, _)| *lasts).sum() };
    let mut ends: BTreeMap<StageAt, TimeSpan> = BTreeMap::new();
    for (at, _) in formula.stages() {
        // Those that use a stage are dated before it; stages do not go in circles.
        let mut way = vec![at];
        while let Some(here) = way.last().copied() {
            let before = way.len();
            let using = users.get(&here).map_or(&[][..], Vec::as_slice);
            way.extend(using.iter().filter(|user| !ends.contains_key(*user)));
            if way.len() == before {
                let begun = using.iter().filter_map(|user| Some(*ends.get(user)? - lasts(user)));
                ends.insert(here, begun.fold(TimeSpan::ZERO, TimeSpan::min));
                way.pop();
            }
        }
    }
    ends
}

fn middle(range: Between<TimeSpan>) -> TimeSpan {
    (range.from + range.to) * 0.5
}
