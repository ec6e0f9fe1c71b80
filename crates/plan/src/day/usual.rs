//! A formula's usual day: served at the time that it states, on no day of the calendar.

use super::planning::{Depth, planned_without_holding};
use super::timeline::{Timeline, Wanted};
use super::workplace::Workplace;
use crate::engine::{Propagation, Watch};
use bench::forecast::Surroundings;
use formula::Formula;
use jiff::{SignedDuration, civil::Date, tz::TimeZone};
use quantity::TimeSpan;
use std::collections::BTreeSet;
use std::sync::Arc;

/// A day like any other, far from a change of the clocks.
const ANY: Date = jiff::civil::date(2001, 6, 13);
/// So much earlier nothing begins.
const BEFORE: SignedDuration = SignedDuration::from_hours(10 * 24);
/// So many questions are asked in looking for a better order: a page must be the same on every machine.
const QUESTIONS: usize = 200_000;

/// The day of a formula that states when it is served, in a kitchen that is not begun late; none where there is no such day.
#[must_use]
pub fn usual(formula: &Formula, place: Workplace, around: &Surroundings) -> Option<Timeline> {
    let at = formula.head.served_at?;
    let (hour, minute) = (i8::try_from(at.hour()).ok()?, i8::try_from(at.minute()).ok()?);
    let serve = ANY.at(hour, minute, 0, 0).to_zoned_datetime(TimeZone::UTC).ok()?;
    let clock = TimeSpan::minutes(f64::from(at.hour()) * 60.0 + f64::from(at.minute()));
    let wanted = Wanted {
        formulas: vec![Arc::new(formula.clone())],
        now: serve.checked_sub(BEFORE).ok()?,
        serve,
        there: BTreeSet::new(),
        happened: Vec::new(),
        seen: Vec::new(),
        fixes: Vec::new(),
        place,
        around: around.clone().with_serving_at(clock),
    };
    planned_without_holding(&wanted, Depth::Order, (&Propagation, &mut Asked(QUESTIONS))).ok()
}

/// Stops after so many questions.
struct Asked(usize);

impl Watch for Asked {
    fn wants_to_stop(&mut self) -> bool {
        self.0 = self.0.saturating_sub(1);
        self.0 == 0
    }
}
