//! What finds the best plan: a trait as narrow as the problem, and the engine behind it.

mod propagation;
mod search;
mod variables;

pub use propagation::Propagation;

use crate::problem::{Problem, Slot};

/// Finds the best plan of a problem.
pub trait Engine {
    /// The best plan by the problem's aims, one after another; the best so far when it is told to stop.
    fn solve(&self, problem: &Problem, watch: &mut dyn Watch) -> Outcome;
}

/// Who looks on while an engine works.
pub trait Watch {
    /// Asked often: whether to stop and give the best so far.
    fn wants_to_stop(&mut self) -> bool;

    /// Told of each better plan: which aim is being worked on, and what it has come to.
    fn is_better(&mut self, _aim: usize, _value: Slot) {}
}

/// A watch that never stops: for problems that are known to be small.
#[derive(Clone, Copy, Debug)]
pub struct Patient;

impl Watch for Patient {
    fn wants_to_stop(&mut self) -> bool {
        false
    }
}

/// What came of a problem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// A plan.
    Found(Plan),
    /// There is no plan even if every wish gives way.
    Impossible,
    /// It was stopped before there was any plan.
    Stopped,
}

/// When each task begins, and how good that is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// When each task begins.
    pub begins: Vec<Slot>,
    /// What each aim has come to.
    pub reached: Vec<Reached>,
    /// Why not every wish is granted: none if all are; each conflict is there even when the wish that counts
    /// least in those before it is dropped. No more than [`MOST_CONFLICTS`].
    pub conflicts: Vec<Conflict>,
    /// Whether it was told to stop while it still asked why: there may be more conflicts, and more that would help.
    pub is_why_cut_short: bool,
}

/// What an aim has come to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reached {
    /// Its value in the plan.
    pub value: Slot,
    /// Proved: no plan that is as good in the aims before has less.
    pub bound: Slot,
}

impl Reached {
    /// Whether nothing better can be.
    #[must_use]
    pub const fn is_proved(&self) -> bool {
        self.value == self.bound
    }
}

/// More conflicts than that are not looked for: nobody reads on.
pub const MOST_CONFLICTS: usize = 3;

/// Wishes that cannot all be granted, though any of them being dropped the others could.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Conflict {
    /// The wishes, by their place in the problem, with what would do if each alone gave way; none if that alone does
    /// not help, or could not be told in time.
    pub wishes: Vec<(usize, Option<Alone>)>,
}

/// A wish that alone gives way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Alone {
    /// The least that it must.
    pub by: Slot,
    /// When each task begins in a plan in which it does.
    pub begins: Vec<Slot>,
}

impl Plan {
    /// Whether nothing better can be by any aim.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.reached.iter().all(Reached::is_proved)
    }
}
