//! When each stage begins by the clock, counted back from serving by the times its author states: enough to
//! know how warm the room is then. Planning the day is another room's work.

use formula::Formula;
use formula::resolve::formula::StageAt;
use quantity::TimeSpan;
use std::collections::BTreeMap;

/// When the stages of a formula begin.
#[derive(Debug)]
pub struct Clock(BTreeMap<StageAt, TimeSpan>);

impl Clock {
    /// Counts back from a time of the day.
    #[must_use]
    pub fn back_from(formula: &Formula, served_at: TimeSpan) -> Self {
        let mut users: BTreeMap<StageAt, Vec<StageAt>> = BTreeMap::new();
        for (at, stage) in formula.stages() {
            for used in stage.uses() {
                users.entry(used).or_default().push(at);
            }
        }
        let mut begins = BTreeMap::new();
        for (at, _) in formula.stages() {
            // Those that use a stage are dated before it; stages do not go in circles.
            let mut way = vec![at];
            while let Some(here) = way.last().copied() {
                let before = way.len();
                let using = users.get(&here).map_or(&[][..], Vec::as_slice);
                way.extend(using.iter().filter(|user| !begins.contains_key(*user)));
                if way.len() == before {
                    let ends = using.iter().filter_map(|user| begins.get(user).copied());
                    let end = ends.fold(served_at, |a: TimeSpan, b: TimeSpan| if b < a { b } else { a });
                    begins.insert(here, end - lasts(formula, here));
                    way.pop();
                }
            }
        }
        Self(begins)
    }

    /// When a stage begins, seconds after midnight of the serving day; before it, negative.
    #[must_use]
    pub fn begins(&self, at: StageAt) -> TimeSpan {
        self.0.get(&at).copied().unwrap_or(TimeSpan::ZERO)
    }
}

fn lasts(formula: &Formula, at: StageAt) -> TimeSpan {
    let pieces = formula.components[at.0].yields.pieces;
    let steps = formula.stage(at).steps.iter();
    steps.map(|step| step.time.map_or(TimeSpan::ZERO, super::super::middle) * step.batches(pieces)).sum()
}
