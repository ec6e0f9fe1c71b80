//! The timeline of a day: what is done when, and why not every wish could be granted.

use super::clock::{Away, span_of};
use super::fixed::{Fix, Fixed};
use super::happened::{Happened, StepName};
use super::job::{Dish, Job};
use super::model::Want;
use super::order::Follows;
use super::seen::{Learnt, Seen, Unused};
use super::stays::Stay;
use super::workplace::Workplace;
use crate::engine::Reached;
use crate::problem::Slot;
use crate::relief::Relief;
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
    /// What was seen of what goes on.
    pub seen: Vec<Seen>,
    /// Steps that are to begin at a time, not before it or not after it.
    pub fixes: Vec<Fix>,
    /// What the kitchen has, and when nobody is at hand.
    pub place: Workplace,
    /// How warm the kitchen is.
    pub around: Surroundings,
}

/// Why there is no timeline.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// Serving would be in the past.
    InThePast,
    /// Nothing has to be done.
    NothingToDo,
    /// Something that is told to have happened, or fixed, is no step of the day, or one of several: how it was named.
    Unknown(StepName),
    /// A step is fixed to a time further from serving than is planned: how it was named.
    FarOff(StepName),
    /// Something that was seen cannot be used: what it was, and why.
    Unused(Box<Seen>, Unused),
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
    /// What was seen, and at which job.
    pub learnt: Vec<Learnt>,
    /// What was fixed, in the order in which it was told.
    pub fixed: Vec<Fixed>,
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
    /// Whether the search for the reasons was told to stop before its end.
    pub is_why_cut_short: bool,
    /// What else would help, each tried out; see [`crate::relief`].
    pub relief: Vec<Relief>,
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
    /// Whether it goes on already.
    pub is_going: bool,
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
    pub(super) fn of(want: Want, by: Slot) -> Self {
        if matches!(want, Want::Room(_) | Want::Large(_)) { Self::Room(by) } else { Self::Time(span_of(by)) }
    }

    /// The room; none where time gives way.
    #[must_use]
    pub const fn room(self) -> i32 {
        match self {
            Self::Room(room) => room,
            Self::Time(_) => 0,
        }
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
    /// From when to when a time in which nobody is at hand is then kept, or a fixed step then goes on.
    pub kept: Option<(ZonedDateTime, ZonedDateTime)>,
}
