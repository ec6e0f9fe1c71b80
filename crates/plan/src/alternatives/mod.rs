//! The same formula spread over the day in other ways, each dosed so that it works, and set side by side.

mod changed;
mod way;

pub(crate) use changed::{AROUND, dose, is_yeast, retimed};
pub use changed::{Change, NotSo};
pub use way::Way;

use crate::day::{Refusal, Timeline, Tries, Wanted, Why, timeline, tries};
use crate::engine::{Engine, Watch};
use bench::rules::proof_read;
use changed::changed;
use formula::{Book, Formula};
use jiff::ZonedDateTime;
use quantity::TimeSpan;
use std::sync::Arc;

/// A way of making a formula, and what comes of it.
#[derive(Debug)]
pub struct Alternative {
    /// The way.
    pub way: Way,
    /// Whether the formula is written that way.
    pub is_as_written: bool,
    /// The day, or why there is none.
    pub day: Result<Planned, NotThatWay>,
}

/// Why a formula is not made a certain way.
#[derive(Clone, Debug, PartialEq)]
pub enum NotThatWay {
    /// The formula cannot be made so.
    Formula(NotSo),
    /// It could, but there is no timeline.
    Day(Refusal),
}

/// A formula made a certain way, with its day.
#[derive(Debug)]
pub struct Planned {
    /// What is other than the formula says.
    pub changes: Vec<Change>,
    /// What proof-reading says of it that it did not say of the formula as written.
    pub minded: Vec<String>,
    /// The day.
    pub timeline: Timeline,
    /// The day in a thousand kitchens.
    pub tries: Tries,
}

/// So many kitchens are tried.
const KITCHENS: usize = 1000;

/// The one formula that is wanted, made in every way.
///
/// # Errors
/// Those of [`timeline`] for the formula as it is written.
pub fn alternatives(
    book: &Book,
    wanted: &Wanted,
    engine: &dyn Engine,
    watch: &mut dyn Watch,
) -> Result<Vec<Alternative>, Refusal> {
    let mut all = Vec::new();
    let Some(formula) = wanted.formulas.first() else { return Err(Refusal::NothingToDo) };
    let own = Way::of(formula);
    for way in Way::ALL {
        let day = planned(way, book, wanted, engine, watch);
        match day {
            Err(NotThatWay::Day(refusal)) if way == own => return Err(refusal),
            day => all.push(Alternative { way, is_as_written: way == own, day }),
        }
    }
    Ok(all)
}

/// The one formula that is wanted, made a certain way.
///
/// # Errors
/// [`NotThatWay`].
pub fn planned(
    way: Way,
    book: &Book,
    wanted: &Wanted,
    engine: &dyn Engine,
    watch: &mut dyn Watch,
) -> Result<Planned, NotThatWay> {
    let written = wanted.formulas.first().ok_or(NotThatWay::Day(Refusal::NothingToDo))?;
    let (formula, changes) = if way == Way::of(written) {
        (Formula::clone(written), Vec::new())
    } else {
        changed(way, book, written, &wanted.around).map_err(NotThatWay::Formula)?
    };
    let minded = newly_minded(book, written, &formula);
    let wanted = Wanted { formulas: vec![Arc::new(formula)], ..wanted.clone() };
    let timeline = timeline(&wanted, engine, watch).map_err(NotThatWay::Day)?;
    Ok(Planned { changes, minded, tries: tries(&timeline, KITCHENS), timeline })
}

/// What proof-reading says of a changed formula and did not say of the written one.
pub(crate) fn newly_minded(book: &Book, written: &Formula, changed: &Formula) -> Vec<String> {
    let found = |formula: &Formula| proof_read(formula, &book.kitchen(), &book.settings);
    let known = found(written);
    let is_new = |code: &str| !known.iter().any(|one| one.code == code);
    found(changed).into_iter().filter(|one| is_new(one.code)).map(|one| one.message).collect()
}

impl Planned {
    /// How long hands are needed, setting things going counted in.
    #[must_use]
    pub fn hands_on(&self) -> TimeSpan {
        let work = self.timeline.entries.iter().map(|entry| match (self.timeline.jobs[entry.job].is_work, entry.is_set_going) {
            (true, _) => TimeSpan::seconds(entry.end.timestamp().duration_since(entry.begin.timestamp()).as_secs_f64()),
            (false, true) => TimeSpan::minutes(5.0),
            (false, false) => TimeSpan::ZERO,
        });
        work.sum()
    }

    /// When the first thing is done.
    #[must_use]
    pub fn begins(&self) -> Option<&ZonedDateTime> {
        self.timeline.entries.first().map(|entry| &entry.begin)
    }

    /// When the baker is up in the last night before serving, and when that was wished; none without a night in it.
    #[must_use]
    pub fn up(&self) -> Option<(Option<&ZonedDateTime>, &ZonedDateTime)> {
        let night = self.timeline.left.iter().rfind(|left| left.away.why == Why::Asleep)?;
        Some((night.kept.as_ref().map(|(_, to)| to), &night.away.to))
    }
}
