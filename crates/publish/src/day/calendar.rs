//! A day's timeline as iCalendar, RFC 5545: an event for each job that needs hands, with an alarm, in the time
//! zone of the place.

use super::prep::{weights, words};
use super::words::{served, verb_in, what_in};
use crate::words::Units;
use jiff::tz::{Offset, TimeZone};
use jiff::{Timestamp, ZonedDateTime};
use plan::day::{Entry, Timeline};

/// The calendar; `stamp` is when it was made.
#[must_use]
pub fn calendar(timeline: &Timeline, units: Units, stamp: &ZonedDateTime) -> String {
    let mut out = Lines::default();
    out.push("BEGIN:VCALENDAR");
    out.push("VERSION:2.0");
    out.push("PRODID:-//wellproved//day//EN");
    out.push("CALSCALE:GREGORIAN");
    let zone = Zone::of(timeline);
    zone.describe(timeline, &mut out);
    let made = stamp.timestamp().strftime("%Y%m%dT%H%M%SZ").to_string();
    for entry in timeline.entries.iter().filter(|entry| timeline.jobs[entry.job].is_work || entry.is_set_going) {
        event(timeline, entry, units, (&zone, &made), &mut out);
    }
    let id = format!("served-{}@wellproved", timeline.served.timestamp().as_second());
    out.push("BEGIN:VEVENT");
    out.push(&format!("UID:{id}"));
    out.push(&format!("DTSTAMP:{made}"));
    out.push(&format!("DTSTART{}", zone.moment(&timeline.served)));
    out.text("SUMMARY", &units.tongue.day_what_is_served(served(timeline).join(", ")));
    out.push("END:VEVENT");
    out.push("END:VCALENDAR");
    out.0
}

fn event(timeline: &Timeline, entry: &Entry, units: Units, (zone, made): (&Zone, &str), out: &mut Lines) {
    let job = &timeline.jobs[entry.job];
    let title = format!("{}: {}", verb_in(timeline, job, units.tongue), what_in(timeline, job, units.tongue));
    let mut description = if job.is_step() { words(timeline, job, units) } else { String::new() };
    if job.is_step() {
        weights(timeline, job, units.tongue).iter().for_each(|weight| description.push_str(&format!("\n{weight}")));
    }
    out.push("BEGIN:VEVENT");
    // The same job served at the same time is the same event when the plan is made again.
    out.push(&format!(
        "UID:{}-{}-job-{}@wellproved",
        timeline.dishes[job.dish].formula.name,
        timeline.wanted.timestamp().as_second(),
        entry.job
    ));
    out.push(&format!("DTSTAMP:{made}"));
    out.push(&format!("DTSTART{}", zone.moment(&entry.begin)));
    out.push(&format!("DTEND{}", zone.moment(&entry.end)));
    out.text("SUMMARY", &title);
    if !description.is_empty() {
        out.text("DESCRIPTION", &description);
    }
    out.push("BEGIN:VALARM");
    out.push("ACTION:DISPLAY");
    out.push("TRIGGER:-PT5M");
    out.text("DESCRIPTION", &title);
    out.push("END:VALARM");
    out.push("END:VEVENT");
}

/// Where the clock hangs: a named zone, or universal time where it has no name.
struct Zone(Option<(String, TimeZone)>);

impl Zone {
    fn of(timeline: &Timeline) -> Self {
        let zone = timeline.served.time_zone();
        let name = zone.iana_name().filter(|name| *name != "UTC");
        Self(name.map(|name| (name.to_owned(), zone.clone())))
    }

    /// What follows DTSTART: the zone and the local time.
    fn moment(&self, moment: &ZonedDateTime) -> String {
        match &self.0 {
            Some((name, _)) => format!(";TZID={name}:{}", moment.strftime("%Y%m%dT%H%M%S")),
            None => format!(":{}", moment.timestamp().strftime("%Y%m%dT%H%M%SZ")),
        }
    }

    /// The zone's own clock from the first job to serving: what it showed at first, and each change.
    fn describe(&self, timeline: &Timeline, out: &mut Lines) {
        let Some((name, zone)) = &self.0 else { return };
        let first = timeline.entries.first().map_or(&timeline.served, |entry| &entry.begin).timestamp();
        out.push("BEGIN:VTIMEZONE");
        out.push(&format!("TZID:{name}"));
        let begun = zone.preceding(first).next().map(|change| change.timestamp());
        match begun {
            Some(begun) => observance(zone, begun, out),
            None => clock(zone.to_offset(first), zone.to_offset(first), ("19700101T000000", false), out),
        }
        for change in zone.following(first).take_while(|change| change.timestamp() <= timeline.served.timestamp()) {
            observance(zone, change.timestamp(), out);
        }
        out.push("END:VTIMEZONE");
    }
}

/// What the clock shows from a change on; the change is told in the time before it.
fn observance(zone: &TimeZone, change: Timestamp, out: &mut Lines) {
    let before = zone.to_offset(change.saturating_sub(jiff::SignedDuration::from_secs(1)).unwrap_or(change));
    let info = zone.to_offset_info(change);
    let local = before.to_datetime(change).strftime("%Y%m%dT%H%M%S").to_string();
    clock(before, info.offset(), (&local, info.dst().is_dst()), out);
}

fn clock(from: Offset, to: Offset, (local, is_summer): (&str, bool), out: &mut Lines) {
    let kind = if is_summer { "DAYLIGHT" } else { "STANDARD" };
    out.push(&format!("BEGIN:{kind}"));
    out.push(&format!("DTSTART:{local}"));
    out.push(&format!("TZOFFSETFROM:{}", offset(from)));
    out.push(&format!("TZOFFSETTO:{}", offset(to)));
    out.push(&format!("END:{kind}"));
}

fn offset(offset: Offset) -> String {
    let seconds = offset.seconds();
    let sign = if seconds < 0 { '-' } else { '+' };
    let minutes = seconds.abs() / 60;
    format!("{sign}{:02}{:02}", minutes / 60, minutes % 60)
}

/// Lines of a calendar, folded at 75 octets and ended as the standard wants.
#[derive(Default)]
struct Lines(String);

impl Lines {
    fn push(&mut self, line: &str) {
        let mut width = 0;
        for letter in line.chars() {
            if width + letter.len_utf8() > 75 {
                self.0.push_str("\r\n ");
                width = 1;
            }
            self.0.push(letter);
            width += letter.len_utf8();
        }
        self.0.push_str("\r\n");
    }

    /// A property whose value is free text.
    fn text(&mut self, name: &str, value: &str) {
        let mut escaped = String::new();
        for letter in value.chars() {
            match letter {
                '\\' | ';' | ',' => escaped.extend(['\\', letter]),
                '\n' => escaped.push_str("\\n"),
                other if other.is_control() => {}
                other => escaped.push(other),
            }
        }
        self.push(&format!("{name}:{escaped}"));
    }
}
