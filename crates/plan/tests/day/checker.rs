//! Goes through a timeline minute by minute and says what is wrong with it. Knows nothing of slots or engines.

use jiff::{SignedDuration, ZonedDateTime};
use plan::day::{Begins, Space, Station, Timeline, Until, Want};

/// Minutes from one moment to another.
fn minutes(from: &ZonedDateTime, to: &ZonedDateTime) -> f64 {
    to.timestamp().duration_since(from.timestamp()).as_secs_f64() / 60.0
}

/// Everything in which a timeline breaks its own rules.
pub fn faults(timeline: &Timeline) -> Vec<String> {
    let mut found = Vec::new();
    // What has been done already has no time any more.
    let entry = |job: usize| timeline.entries.iter().find(|entry| entry.job == job);
    for (job, one) in timeline.jobs.iter().enumerate() {
        let Some(entry) = entry(job) else { continue };
        let lasts = minutes(&entry.begin, &entry.end);
        let leeway = if one.is_held(&timeline.dishes) { one.span.leeway.as_minutes() } else { 0.0 };
        if lasts + 1.01 < one.span.likely.as_minutes() || lasts > one.span.likely.as_minutes() + leeway + 5.0 {
            found.push(format!("job {job} has {lasts} min for {:?}", one.span));
        }
    }
    for one in &timeline.follows {
        let after = one.after.map_or(Some(&timeline.served), |job| entry(job).map(|entry| &entry.begin));
        let (Some(before), Some(after)) = (entry(one.before), after) else { continue };
        let wait = minutes(&before.end, after);
        let gives_way: f64 = timeline.unmet.iter().map(|unmet| unmet.gives_way.time().as_minutes()).sum();
        let most = one.most.map_or(f64::INFINITY, |most| most.as_minutes());
        if wait < 0.0 || wait > most + if one.is_strict { 0.0 } else { gives_way } {
            found.push(format!("a wait of {wait} min in {one:?}"));
        }
    }
    for (at, one) in timeline.fixed.iter().enumerate().filter(|(_, one)| !one.has_happened) {
        let Some(entry) = entry(one.job) else { continue };
        let late = minutes(&one.fix.when, &entry.begin);
        let unmet = timeline.unmet.iter().find(|unmet| unmet.want == Want::Fixed(at));
        let gives_way = unmet.map_or(0.0, |unmet| unmet.gives_way.time().as_minutes());
        let beside = match one.fix.begins {
            Begins::At => late.abs() - 2.5,
            Begins::NotBefore => -late,
            Begins::NotAfter => late,
        };
        // A slot of the grid more, where the moment lies between two.
        if beside > if unmet.is_some() { gives_way + 5.0 } else { 0.0 } {
            found.push(format!("job {} begins {late} min beside {:?}", one.job, one.fix));
        }
    }
    let first = timeline.entries.first().map_or(&timeline.served, |entry| &entry.begin);
    let mut now = first.timestamp();
    while now < timeline.served.timestamp() {
        found.extend(at(timeline, now));
        now += SignedDuration::from_mins(1);
    }
    found.truncate(5);
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
        let needs = |entry: &&&plan::day::Entry| {
            let job = &timeline.jobs[entry.job];
            match station {
                Station::Hands => i32::from(job.is_work || is_being_set_going(entry)),
                Station::Oven if job.stations.contains(&station) => job.decks,
                Station::Proofer if job.stations.contains(&station) => job.warm,
                _ => i32::from(job.stations.contains(&station)),
            }
        };
        let in_use: i32 = going.iter().map(|entry| needs(&entry)).sum();
        if in_use > timeline.place.capacity(station) {
            found.push(format!("{in_use} of {station:?} at {now}"));
        }
    }
    for station in [Station::Oven, Station::Proofer] {
        let heats = going.iter().filter_map(|entry| {
            let job = &timeline.jobs[entry.job];
            let step = &timeline.dishes[job.dish].formula.stage(job.at).steps[job.step];
            job.stations.contains(&station).then_some(step.temperature)
        });
        let heats: Vec<_> = heats.collect();
        let holds =
            |heat: f64| heats.iter().flatten().all(|range| (range.from.as_celsius()..=range.to.as_celsius()).contains(&heat));
        if heats.len() > 1 && !heats.iter().flatten().any(|range| holds(range.from.as_celsius())) {
            found.push(format!("{station:?} is to be as hot as {heats:?} at {now}"));
        }
    }
    found.extend(room(timeline, now));
    let is_quiet = timeline.left.iter().filter_map(|left| left.kept.as_ref()).any(|(from, to)| is_in(from, to));
    for entry in going.iter().filter(|entry| timeline.jobs[entry.job].wants_somebody() || is_being_set_going(entry)) {
        if is_quiet {
            found.push(format!("job {} goes on at {now}, when nobody is at hand", entry.job));
        }
    }
    found
}

/// What stands in bowls and in the fridge, counted up.
fn room(timeline: &Timeline, now: jiff::Timestamp) -> Vec<String> {
    let entry = |job: usize| timeline.entries.iter().find(|entry| entry.job == job);
    let is_over = |until: &Until| match until {
        Until::Begins(job) => entry(*job).is_none_or(|entry| entry.begin.timestamp() <= now),
        Until::Done(job) => entry(*job).is_none_or(|entry| entry.end.timestamp() <= now),
        Until::Served => timeline.served.timestamp() <= now,
    };
    let mut found = Vec::new();
    for (space, there_is) in [
        (Space::Bowls, f64::from(timeline.place.bowls.value)),
        (Space::Oven, f64::from(timeline.place.capacity(Station::Oven))),
        (Space::Fridge, timeline.place.fridge_room.value.as_millilitres() / 100.0),
    ] {
        let stands = timeline.stays.iter().filter(|stay| {
            stay.space == space
                && entry(stay.from).is_none_or(|entry| entry.begin.timestamp() <= now)
                && !stay.until.iter().all(is_over)
        });
        let taken: i32 = stands.map(|stay| stay.amount).sum();
        let missing =
            timeline.unmet.iter().find(|unmet| unmet.want == Want::Room(space)).map_or(0, |unmet| unmet.gives_way.room());
        if f64::from(taken) > there_is + f64::from(missing) {
            found.push(format!("{taken} of {there_is} {space:?} at {now}"));
        }
    }
    let standing = |stay: &&plan::day::Stay| {
        let has_come = entry(stay.from).is_none_or(|entry| entry.begin.timestamp() <= now);
        stay.space == Space::Bowls && has_come && !stay.until.iter().all(is_over)
    };
    for (size, (holds, _)) in timeline.place.bowl_sizes.iter().enumerate().skip(1) {
        let there: u32 = timeline.place.bowl_sizes[size..].iter().map(|(_, count)| count).sum();
        let taken: i32 = timeline.stays.iter().filter(standing).filter(|stay| stay.size >= size).map(|stay| stay.amount).sum();
        let missing = timeline.unmet.iter().find(|unmet| unmet.want == Want::Large(size));
        let missing = missing.map_or(0.0, |unmet| f64::from(unmet.gives_way.room()));
        if f64::from(taken) > f64::from(there) + missing {
            found.push(format!("{taken} bowls of {holds:?} at {now}, of {there}"));
        }
    }
    found
}

fn timeline_moment(entry: &plan::day::Entry, now: jiff::Timestamp) -> ZonedDateTime {
    now.to_zoned_datetime(entry.begin.time_zone().clone())
}
