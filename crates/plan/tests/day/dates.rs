//! Dates that go wrong easily. That the clocks go forward in Vienna at 02:00 on 28 March 2027 and back at 03:00 on
//! 25 October 2026 is the time zone database's (IANA).

use crate::checker::faults;
use crate::demo::{moment, plan};
use plan::day::{Refusal, Timeline};

fn muffins(serve: &str, now: &str) -> Timeline {
    let timeline = plan(&["potato-muffins"], serve, now).expect("a timeline");
    assert_eq!(faults(&timeline), Vec::<String>::new(), "{serve}");
    timeline
}

/// How long the sponge stands, in real hours, and on the clock.
fn sponge(timeline: &Timeline) -> (f64, f64) {
    let is_it = |entry: &&plan::day::Entry| timeline.dishes[0].formula.stage(timeline.jobs[entry.job].at).name == "sponge";
    let entry = timeline.entries.iter().filter(is_it).nth(1).expect("the ferment");
    let real = entry.end.timestamp().duration_since(entry.begin.timestamp()).as_secs_f64() / 3600.0;
    let shown = entry.begin.datetime().duration_until(entry.end.datetime()).as_secs_f64() / 3600.0;
    (real, shown)
}

#[test]
fn a_sponge_stands_its_hours_across_the_change_of_the_clocks() {
    for (serve, now, change) in [
        ("2027-03-28T10:30[Europe/Vienna]", "2027-03-26T08:00[Europe/Vienna]", 1.0),
        ("2026-10-25T10:30[Europe/Vienna]", "2026-10-23T08:00[Europe/Vienna]", -1.0),
        ("2026-11-29T10:30[Europe/Vienna]", "2026-11-27T08:00[Europe/Vienna]", 0.0),
    ] {
        let (real, shown) = sponge(&muffins(serve, now));
        assert_eq!(real, 12.0, "{serve}");
        assert_eq!(shown - real, change, "{serve}");
    }
}

#[test]
fn a_night_is_as_long_as_the_clock_makes_it() {
    let timeline = muffins("2027-03-28T11:30[Europe/Vienna]", "2027-03-26T08:00[Europe/Vienna]");
    let night = timeline.left.last().expect("the night before");
    assert_eq!(night.away.to.timestamp().duration_since(night.away.from.timestamp()).as_hours(), 7);
}

#[test]
fn midnight_and_the_leap_day() {
    for (serve, now, first) in [
        ("2028-02-29T10:00[Europe/Vienna]", "2028-02-27T08:00[Europe/Vienna]", "2028-02-28"),
        ("2028-03-01T10:00[Europe/Vienna]", "2028-02-28T08:00[Europe/Vienna]", "2028-02-29"),
        ("2027-01-01T00:00[Europe/Vienna]", "2026-12-29T08:00[Europe/Vienna]", "2026-12-31"),
    ] {
        let timeline = muffins(serve, now);
        assert_eq!(timeline.served, moment(serve));
        assert_eq!(timeline.entries[0].begin.date().to_string(), first, "{serve}");
    }
}

#[test]
fn an_odd_minute_is_kept() {
    let timeline = muffins("2026-11-29T10:02[Europe/Vienna]", "2026-11-27T08:00:31[Europe/Vienna]");
    assert_eq!(timeline.served, moment("2026-11-29T10:02[Europe/Vienna]"));
}

#[test]
fn the_past_is_refused() {
    let refused = |serve: &str, now: &str| plan(&["potato-muffins"], serve, now).err();
    let (past, now) = ("2026-11-29T09:30[Europe/Vienna]", "2026-11-29T09:30[Europe/Vienna]");
    assert_eq!(refused(past, now), Some(Refusal::InThePast));
    assert_eq!(refused(past, "2026-11-30T00:00[Europe/Vienna]"), Some(Refusal::InThePast));
}

#[test]
fn too_late_to_begin_is_served_later() {
    let timeline = muffins("2026-11-29T09:30[Europe/Vienna]", "2026-11-29T07:00[Europe/Vienna]");
    assert!(timeline.served > timeline.wanted);
    assert!(timeline.entries.iter().all(|entry| entry.begin >= moment("2026-11-29T07:00[Europe/Vienna]")));
    assert!(timeline.conflicts.iter().flatten().any(|one| one.want == plan::day::Want::Served && one.alone.is_some()));
}
