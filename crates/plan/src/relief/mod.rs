//! What would help where wishes give way, besides giving them up: beginning earlier, or another dose of yeast. Each is
//! tried out before it is told.

mod quicker;

use crate::day::{Depth, FRESH, Timeline, Want, Wanted, again};
use crate::engine::{Engine, Reached, Watch};
use bench::target::Dosed;
use formula::Book;
use jiff::{SignedDuration, ZonedDateTime};
use quantity::TimeSpan;

/// Something that would help, with the day that then comes of it.
#[derive(Clone, Debug)]
pub struct Relief {
    /// What it is.
    pub help: Help,
    /// The day as it was tried, with wishes that still give way: none that counts as much.
    pub then: Timeline,
}

/// What would help. Jobs are told by their numbers in the day that needs help.
#[derive(Clone, Debug, PartialEq)]
pub enum Help {
    /// These stages begun so early, with a job of each; those times are past. The first one first.
    Earlier(Vec<(usize, ZonedDateTime)>),
    /// What a job waits for used after that time: it is foreseen by then with the dose as it is, sooner than its formula says.
    AsItIs(usize, TimeSpan),
    /// These doses, with which a job takes so long.
    Dose(usize, Vec<Dosed>, TimeSpan),
}

/// What would help a day on which wishes give way; nothing where none does, or where there is no time to try.
pub fn relief(book: &Book, wanted: &Wanted, day: &Timeline, engine: &dyn Engine, watch: &mut dyn Watch) -> Vec<Relief> {
    if day.unmet.is_empty() {
        return Vec::new();
    }
    let mut found = quicker::quicker(book, wanted, day, (engine, watch));
    found.extend(earlier(wanted, day, engine, watch));
    found
}

/// A night and half a day: so much earlier than by what is missing the day is tried.
const BEFORE: SignedDuration = SignedDuration::from_hours(36);

/// When things would have had to begin to be served in time.
fn earlier(wanted: &Wanted, day: &Timeline, engine: &dyn Engine, watch: &mut dyn Watch) -> Option<Relief> {
    day.unmet.iter().find(|unmet| unmet.want == Want::Served)?;
    let late = day.served.timestamp().duration_since(day.wanted.timestamp());
    let now = wanted.now.checked_sub(late.checked_add(BEFORE)?).ok()?;
    let sooner = again(&Wanted { now, ..wanted.clone() }, day, Depth::Order, (engine, watch)).ok()?;
    let is_late = sooner.unmet.iter().any(|unmet| unmet.want == Want::Served);
    if is_late || !sooner.reached.iter().all(Reached::is_proved) {
        return None;
    }
    let mut missed: Vec<(usize, ZonedDateTime)> = Vec::new();
    for entry in sooner.entries.iter().filter(|entry| entry.begin < wanted.now) {
        let stage = |job: usize| (day.jobs[job].dish, day.jobs[job].at);
        if missed.iter().all(|(job, _)| stage(*job) != stage(entry.job)) {
            missed.push((entry.job, entry.begin.clone()));
        }
    }
    (!missed.is_empty()).then_some(Relief { help: Help::Earlier(missed), then: sooner })
}

/// Whether a day grants all wishes of a class of which another does not, and none less of those that count more.
fn helps(one: &Timeline, other: &Timeline) -> bool {
    let value = |day: &Timeline| day.reached.iter().take(FRESH).map(|reached| reached.value).collect::<Vec<_>>();
    let (one, other) = (value(one), value(other));
    let first = one.iter().zip(&other).find(|(one, other)| one != other);
    first.is_some_and(|(one, other)| *one == 0 && other > one)
}
