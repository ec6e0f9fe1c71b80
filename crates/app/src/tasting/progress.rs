//! How far a sitting has come, without what was answered; and its end.

use super::{Held, now};
use crate::failure::Failure;
use crate::memory::told;
use bench::tasting::items;
use std::fmt;
use store::Store;

/// How many of the seats have come how far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// How many seats there are.
    pub seats: usize,
    /// How many have answered everything.
    pub whole: usize,
    /// How many have answered something, and not everything.
    pub in_part: usize,
    /// How many have agreed to taste and not answered everything.
    pub begun: usize,
    /// How many agreed to taste.
    pub agreed: usize,
}

/// How far a sitting has come.
pub async fn progress(store: &Store, held: &Held) -> Result<Progress, Failure> {
    let all = store.progress(held.sitting.number).await.map_err(told)?;
    let asked = held.seats.first().map_or(0, |seat| items(&held.tasting, seat).len() as i64);
    let count = |is: &dyn Fn(&store::Progress) -> bool| all.iter().filter(|one| is(one)).count();
    Ok(Progress {
        seats: all.len(),
        whole: count(&|one| one.answered >= asked),
        in_part: count(&|one| one.answered > 0 && one.answered < asked),
        begun: count(&|one| one.agreed && one.answered < asked),
        agreed: count(&|one| one.agreed),
    })
}

impl fmt::Display for Progress {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let have = if self.whole == 1 { "has" } else { "have" };
        write!(f, "{} of {} {have} answered everything", self.whole, self.seats)
    }
}

/// What is said where a tasting has no full answer.
pub const NOBODY: &str = "nobody has answered everything yet: there is nothing that closing could show";

/// Closes a sitting of which somebody answered everything; whether it was open.
pub async fn close(store: &Store, held: &Held) -> Result<bool, Failure> {
    if held.sitting.closed.is_none() && progress(store, held).await?.whole == 0 {
        return Err(Failure::new(NOBODY));
    }
    store.close_sitting(held.sitting.number, now()).await.map_err(told)
}

/// Clears a table at which nobody answered everything, so that it can be laid anew: what was answered in part stays in
/// the memory and is no evidence.
pub async fn clear(store: &Store, held: &Held) -> Result<(), Failure> {
    let progress = progress(store, held).await?;
    if held.sitting.closed.is_some() {
        return Err(Failure::new("no table is laid: there is nothing to clear"));
    }
    if progress.whole > 0 {
        return Err(Failure::new(format!("{progress}: what was answered is not cleared away, the tasting is closed")));
    }
    store.close_sitting(held.sitting.number, now()).await.map_err(told)?;
    Ok(())
}
