//! The grid on the clock: which moment each slot is, and when nobody is at hand.

use super::workplace::Workplace;
use crate::problem::Slot;
use formula::read::{DayHours, DayTime};
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp, ZonedDateTime, tz::TimeZone};
use quantity::TimeSpan;

/// So many minutes are a slot.
pub const MINUTES: i32 = 5;

/// The grid: slots of five minutes of real time, so that a change of the clocks lengthens or shortens no step.
#[derive(Clone, Debug)]
pub struct Clock {
    origin: Timestamp,
    zone: TimeZone,
}

impl Clock {
    /// A grid on which a moment falls on that slot.
    #[must_use]
    pub fn with(moment: &ZonedDateTime, slot: Slot) -> Self {
        let origin = moment.timestamp().saturating_sub(length(slot)).unwrap_or(Timestamp::MIN);
        Self { origin, zone: moment.time_zone().clone() }
    }

    /// The moment of a slot.
    #[must_use]
    pub fn moment(&self, slot: Slot) -> ZonedDateTime {
        self.origin.saturating_add(length(slot)).unwrap_or(Timestamp::MAX).to_zoned_datetime(self.zone.clone())
    }

    /// The last slot that is not after a moment.
    #[must_use]
    pub fn slot_before(&self, moment: Timestamp) -> Slot {
        Slot::try_from(self.seconds_to(moment).div_euclid(60 * i64::from(MINUTES))).unwrap_or(Slot::MAX)
    }

    /// The first slot that is not before a moment.
    #[must_use]
    pub fn slot_after(&self, moment: Timestamp) -> Slot {
        let slot = i64::from(MINUTES) * 60;
        Slot::try_from(-(-self.seconds_to(moment)).div_euclid(slot)).unwrap_or(Slot::MAX)
    }

    fn seconds_to(&self, moment: Timestamp) -> i64 {
        moment.as_second() - self.origin.as_second()
    }
}

fn length(slots: Slot) -> SignedDuration {
    SignedDuration::from_mins(i64::from(slots) * i64::from(MINUTES))
}

/// How many slots a task takes that lasts so long; what is over by a minute is not rounded up.
#[must_use]
pub fn slots_for(span: TimeSpan) -> Slot {
    if span <= TimeSpan::ZERO { 0 } else { slots((span.as_minutes() - 1.0) / f64::from(MINUTES)).max(1) }
}

/// How many slots a wait of at most so long has.
#[must_use]
pub fn slots_within(span: TimeSpan) -> Slot {
    slots((span.as_minutes() / f64::from(MINUTES) + 1e-9).floor())
}

fn slots(count: f64) -> Slot {
    count.ceil().clamp(0.0, 1e6) as Slot
}

/// The length of so many slots.
#[must_use]
pub fn span_of(slots: Slot) -> TimeSpan {
    TimeSpan::minutes(f64::from(slots) * f64::from(MINUTES))
}

/// Why nobody is at hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// Out of the kitchen.
    Out,
    /// Asleep.
    Asleep,
}

/// A time in which nobody is at hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Away {
    /// Why.
    pub why: Why,
    /// From when.
    pub from: ZonedDateTime,
    /// To when.
    pub to: ZonedDateTime,
}

/// Every time between two moments in which nobody is at hand, in order.
#[must_use]
pub fn aways(place: &Workplace, from: &ZonedDateTime, to: &ZonedDateTime) -> Vec<Away> {
    let daily =
        place.asleep.value.iter().map(|hours| (Why::Asleep, *hours)).chain(place.out.iter().map(|hours| (Why::Out, *hours)));
    let mut found = Vec::new();
    for (why, hours) in daily {
        let mut day = from.date().yesterday().unwrap_or(Date::MIN);
        while day <= to.date() {
            found.extend(on(day, hours, from.time_zone()).map(|(from, to)| Away { why, from, to }));
            let Ok(next) = day.tomorrow() else { break };
            day = next;
        }
    }
    found.retain(|away| away.to > *from && away.from < *to && away.from < away.to);
    found.sort_by(|a, b| (&a.from, a.why).cmp(&(&b.from, b.why)));
    found
}

/// Hours of the day on a date; past midnight they end on the next.
fn on(day: Date, hours: DayHours, zone: &TimeZone) -> Option<(ZonedDateTime, ZonedDateTime)> {
    let moment = |day: Date, time: DayTime| {
        day.at(i8::try_from(time.hour()).ok()?, i8::try_from(time.minute()).ok()?, 0, 0).to_zoned_datetime(zone.clone()).ok()
    };
    let last = if hours.to > hours.from { day } else { day.tomorrow().ok()? };
    Some((moment(day, hours.from)?, moment(last, hours.to)?))
}
