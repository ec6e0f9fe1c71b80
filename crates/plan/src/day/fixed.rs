//! What a baker fixes of a day: a step that begins at a time, not before it, or not after it.

use super::clock::{Clock, MINUTES};
use super::happened::{Progress, StepName};
use super::job::{Dish, Job};
use super::timeline::Refusal;
use crate::problem::Slot;
use jiff::ZonedDateTime;

/// When a step is to begin, seen from a moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Begins {
    /// Then.
    At,
    /// Then or later.
    NotBefore,
    /// Then or earlier.
    NotAfter,
}

impl Begins {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::At, Self::NotBefore, Self::NotAfter];

    /// As options, addresses and JSON call it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::At => "at",
            Self::NotBefore => "not-before",
            Self::NotAfter => "not-after",
        }
    }

    /// The one of that name.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.word() == word)
    }
}

/// A step that is fixed, as it is told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fix {
    /// Which step.
    pub of: StepName,
    /// How its beginning is fixed.
    pub begins: Begins,
    /// To when.
    pub when: ZonedDateTime,
}

/// A step that is fixed, and which job it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fixed {
    /// As it was told.
    pub fix: Fix,
    /// The job.
    pub job: usize,
    /// Whether it has begun or is done already: what happened is not wished for any more.
    pub has_happened: bool,
}

/// Further away than any slot of a plan.
const FAR: Slot = 1_000_000;

impl Fix {
    /// The slots in which the step may begin.
    pub(super) fn window(&self, clock: &Clock) -> (Slot, Slot) {
        let when = self.when.timestamp();
        let (before, after) = (clock.slot_before(when).clamp(-FAR, FAR), clock.slot_after(when).clamp(-FAR, FAR));
        let is_nearer_before = when.duration_since(clock.moment(before).timestamp()).as_mins() * 2 < i64::from(MINUTES);
        let nearest = if is_nearer_before { before } else { after };
        match self.begins {
            Begins::At => (nearest, nearest),
            Begins::NotBefore => (after, FAR),
            Begins::NotAfter => (-FAR, before),
        }
    }
}

/// The jobs that are fixed.
///
/// # Errors
/// The name that fits no job, or more than one.
pub fn fixed(fixes: &[Fix], (dishes, jobs): (&[Dish], &[Job]), progress: &[Progress]) -> Result<Vec<Fixed>, Refusal> {
    let one = |fix: &Fix| {
        let job = fix.of.job(dishes, jobs).ok_or_else(|| Refusal::Unknown(fix.of.clone()))?;
        Ok(Fixed { fix: fix.clone(), job, has_happened: progress[job] != Progress::Open })
    };
    fixes.iter().map(one).collect()
}

/// How far before and after serving steps are fixed, in slots.
///
/// # Errors
/// The name of one that is fixed to a time further away than that.
pub fn reach(fixes: &[Fix], serve: &ZonedDateTime, furthest: Slot) -> Result<(Slot, Slot), Refusal> {
    let clock = Clock::with(serve, 0);
    let (mut before, mut after) = (0, 0);
    for fix in fixes {
        let slot = clock.slot_before(fix.when.timestamp()).clamp(-FAR, FAR);
        if slot.abs() > furthest {
            return Err(Refusal::FarOff(fix.of.clone()));
        }
        before = before.max(-slot);
        after = after.max(slot);
    }
    Ok((before, after))
}
