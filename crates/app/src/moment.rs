//! Moments and time zones as the command line says them, and the clock on the wall.

use crate::failure::Failure;
use jiff::civil::{DateTime, Time};
use jiff::tz::TimeZone;
use jiff::{Timestamp, ZonedDateTime};

/// The zone of that name, or the system's own.
pub fn zone(name: Option<&str>) -> Result<TimeZone, Failure> {
    let Some(name) = name else { return Ok(TimeZone::try_system().unwrap_or(TimeZone::UTC)) };
    TimeZone::get(name).map_err(|_| {
        Failure::new(format!("there is no time zone called “{name}”"))
            .hint("write it as the time zone database does: \"Europe/Vienna\"")
    })
}

/// The moment that is taken for now: what the wall clock shows, unless another is said.
pub fn now(said: Option<&str>, zone: &TimeZone) -> Result<ZonedDateTime, Failure> {
    let clock = Timestamp::now().to_zoned_datetime(zone.clone());
    said.map_or(Ok(clock.clone()), |text| read(text, zone, &clock))
}

/// The moment of publishing, as RFC 3339 writes it: the wall clock's, or the one that reproducible builds are told
/// by `SOURCE_DATE_EPOCH`, in seconds since 1970.
pub fn of_publishing() -> String {
    let told = std::env::var("SOURCE_DATE_EPOCH").ok().and_then(|seconds| seconds.parse().ok());
    let moment = told.and_then(|seconds| Timestamp::from_second(seconds).ok()).unwrap_or_else(Timestamp::now);
    Timestamp::from_second(moment.as_second()).unwrap_or(moment).to_string()
}

/// A moment: "2026-11-29 09:30", or "09:30" for the next time the clock shows that.
pub fn read(text: &str, zone: &TimeZone, now: &ZonedDateTime) -> Result<ZonedDateTime, Failure> {
    let text = text.trim();
    if let Some(time) = of_day(text) {
        let today = at(now.date().to_datetime(time), zone)?;
        let tomorrow = || now.date().tomorrow().map_err(|_| wrong(text));
        return if today > *now { Ok(today) } else { at(tomorrow()?.to_datetime(time), zone) };
    }
    let is_whole = text.contains([' ', 'T', 't']);
    let datetime: DateTime = text.parse().ok().filter(|_| is_whole).ok_or_else(|| wrong(text))?;
    at(datetime, zone)
}

/// A moment: "2026-11-28 20:00", or "20:00" for the last time the clock shows that until then.
pub fn read_until(text: &str, until: &ZonedDateTime) -> Result<ZonedDateTime, Failure> {
    let (text, zone) = (text.trim(), until.time_zone());
    let Some(time) = of_day(text) else { return read(text, zone, until) };
    let same_day = at(until.date().to_datetime(time), zone)?;
    let before = || until.date().yesterday().map_err(|_| wrong(text));
    if same_day <= *until { Ok(same_day) } else { at(before()?.to_datetime(time), zone) }
}

/// A moment that is past: "2026-11-29 06:10", or "06:10" for the last time the clock showed that.
pub fn read_past(text: &str, zone: &TimeZone, now: &ZonedDateTime) -> Result<ZonedDateTime, Failure> {
    let text = text.trim();
    let moment = match of_day(text) {
        None => read(text, zone, now)?,
        Some(time) => {
            let today = at(now.date().to_datetime(time), zone)?;
            let yesterday = || now.date().yesterday().map_err(|_| wrong(text));
            if today <= *now { today } else { at(yesterday()?.to_datetime(time), zone)? }
        }
    };
    if moment <= *now {
        Ok(moment)
    } else {
        Err(Failure::new(format!("“{text}” is still to come")).hint("only what has happened can be told"))
    }
}

fn of_day(text: &str) -> Option<Time> {
    let time = formula::read::DayTime::read(text)?;
    Time::new(i8::try_from(time.hour()).ok()?, i8::try_from(time.minute()).ok()?, 0, 0).ok()
}

/// The moment at which the clock of a zone shows that; clocks that are changed skip an hour or show it twice.
fn at(datetime: DateTime, zone: &TimeZone) -> Result<ZonedDateTime, Failure> {
    let shown = datetime.strftime("%-d %B %Y, %H:%M");
    zone.to_ambiguous_zoned_datetime(datetime).unambiguous().map_err(|_| {
        Failure::new(format!("on {shown} the clocks are changed: that time does not come, or comes twice"))
            .hint("say a time an hour earlier or later")
    })
}

fn wrong(text: &str) -> Failure {
    Failure::new(format!("“{text}” is no moment"))
        .hint("write \"2026-11-29 09:30\", or \"09:30\" for the next time the clock shows that")
}
