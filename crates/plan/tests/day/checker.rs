//! Goes through a timeline minute by minute and says what is wrong with it. Knows nothing of slots or engines.

use jiff::{SignedDuration, ZonedDateTime};
use plan::day::{Station, Timeline};

/// Minutes from one moment to another.
fn minutes(from: &ZonedDateTime, to: &ZonedDateTime) -> f64 {
    to.timestamp().duration_since(from.timestamp()).as_secs_f64() / 60.0
}

/// Everything in which a timeline breaks its own rules.
pub fn faults(timeline: &Timeline) -> Vec<String> {
    let mut found = Vec::new();
    let entry = |job: usize| timeline.entries.iter().find(|entry| entry.job == job).expect("every job has its time");
    for (job, one) in timeline.jobs.iter().enumerate() {
        let lasts = minutes(&entry(job).begin, &entry(job).end);
        if lasts + 1.01 < one.span.likely.as_minutes() || lasts > one.span.likely.as_minutes() + 5.0 {
            found.push(format!("job {job} has {lasts} min for {:?}", one.span));
        }
    }
    for one in &timeline.follows {
        let after = one.after.map_or(&timeline.served, |job| &entry(job).begin);
        let wait = minutes(&entry(one.before).end, after);
        let gives_way: f64 = timeline.unmet.iter().map(|unmet| unmet.gives_way.as_minutes()).sum();
        let most = one.most.map_or(f64::INFINITY, |most| most.as_minutes());
        if wait < 0.0 || wait > most + if one.is_strict { 0.0 } else { gives_way } {
            found.push(format!("a wait of {wait} min in {one:?}"));
        }
    }
    let first = timeline.entries.first().map_or(&timeline.served, |entry| &entry.begin);
    let mut now = first.timestamp();
    while now < timeline.served.timestamp() {
        found.extend(at(timeline, now));
        now += SignedDuration::from_mins(1);
    }
    found
}

/// What is wrong at a minute: too little of something, or nobody at hand.
fn at(timeline: &Timeline, now: jiff::Timestamp) -> Vec<String> {
    let mut found = Vec::new();
    let is_in = |from: &ZonedDateTime, to: &ZonedDateTime| from.timestamp() <= now && now < to.timestamp();
    let going: Vec<_> = timeline.entries.iter().filter(|entry| is_in(&entry.begin, &entry.end)).collect();
    let is_being_set_going =
        |entry: &&&plan::day::Entry| entry.is_set_going && minutes(&entry.begin, &timeline_moment(entry, now)) < 5.0;
    for station in Station::ALL {
        let in_use = going
            .iter()
            .filter(|entry| {
                let job = &timeline.jobs[entry.job];
                match station {
                    Station::Hands => job.is_work || is_being_set_going(entry),
                    _ => job.stations.contains(&station),
                }
            })
            .count();
        if in_use > usize::try_from(timeline.place.capacity(station)).expect("a count") {
            found.push(format!("{in_use} of {station:?} at {now}"));
        }
    }
    let is_quiet = timeline.left.iter().filter_map(|left| left.kept.as_ref()).any(|(from, to)| is_in(from, to));
    for entry in going.iter().filter(|entry| timeline.jobs[entry.job].wants_somebody() || is_being_set_going(entry)) {
        if is_quiet {
            found.push(format!("job {} goes on at {now}, when nobody is at hand", entry.job));
        }
    }
    found
}

fn timeline_moment(entry: &plan::day::Entry, now: jiff::Timestamp) -> ZonedDateTime {
    now.to_zoned_datetime(entry.begin.time_zone().clone())
}
