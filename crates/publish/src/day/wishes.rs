//! Which wishes give way, why, and what would help, in words.

use super::relief;
use super::words::{action, day, span, span_in, thing, thing_in, time, time_seen_from, verb, verb_in};
use crate::tongue::Tongue;
use jiff::{SignedDuration, ZonedDateTime};
use plan::day::{Against, Away, Fix, Fixed, HowFar, Learnt, Left, Space, Timeline, Told, Want, What, Why};
use plan::engine::Reached;
use quantity::{Between, TimeSpan, Volume, print};
use std::collections::BTreeSet;

/// What the wishes have come to, a sentence a line.
pub fn told(timeline: &Timeline) -> Vec<String> {
    let mut lines = giving_way(timeline);
    if lines.is_empty() {
        return vec!["Every wish is granted.".to_owned()];
    }
    lines.insert(0, "Not every wish can be granted:".to_owned());
    lines.extend(relief::needed(timeline));
    for conflict in &timeline.conflicts {
        let rules: Vec<String> = conflict.iter().filter_map(|one| rule(timeline, one.want)).collect();
        let help: Vec<String> = conflict.iter().filter_map(|one| would_help(timeline, one)).collect();
        match &rules[..] {
            [] => {}
            [alone] => lines.push(format!("Whatever else gives way, this cannot be: {alone}.")),
            _ => lines.push(format!("These stand against each other: {}.", rules.join("; "))),
        }
        match (&help[..], rules.len()) {
            ([], _) => {}
            ([alone], 1) => lines.push(format!("With everything else as wished: {alone}.")),
            ([alone], _) => lines.push(format!("This would do: {alone}.")),
            _ => lines.push(format!("Any one of these would do: {}.", help.join("; or "))),
        }
    }
    if timeline.is_why_cut_short {
        lines.push("The search for the reasons was cut short: there may be more of them, and more that would help.".to_owned());
    }
    let tried = timeline.relief.iter().filter(|one| relief::is_open(one));
    let tried: Vec<String> = tried.map(|one| relief::told(timeline, one)).collect();
    match tried.len() {
        0 => {}
        1 => lines.push("Tried out, this would do too:".to_owned()),
        _ => lines.push("Tried out, any one of these would do too:".to_owned()),
    }
    lines.extend(tried);
    lines
}

/// What was seen, and what is foreseen of it now.
pub fn learnt(timeline: &Timeline) -> Vec<String> {
    let one = |learnt: &Learnt| {
        let job = &timeline.jobs[learnt.job];
        let what = match &learnt.seen.what {
            What::Warm(temperature) => format!("at {}", print::celsius(Between::just(*temperature))),
            What::Risen(share, when) => {
                format!("risen by {} at {}", print::percent(*share, 0), time_seen_from(when, &timeline.served))
            }
        };
        let entry = timeline.entries.iter().find(|entry| entry.job == learnt.job && job.span.from == Told::Foreseen);
        let now = entry.map(|entry| {
            format!("; “{}” is now foreseen to be done at {}", verb(timeline, job), time_seen_from(&entry.end, &timeline.served))
        });
        format!("Seen: {} {what}{}.", thing(timeline, job), now.unwrap_or_default())
    };
    timeline.learnt.iter().map(one).collect()
}

/// The wishes that give way, a line each.
pub fn giving_way(timeline: &Timeline) -> Vec<String> {
    timeline.unmet.iter().map(|unmet| gives_way(timeline, unmet.want, unmet.gives_way)).collect()
}

/// How a job is fixed: "not before 06:30".
pub fn fixed(timeline: &Timeline, job: usize) -> impl Iterator<Item = String> {
    let own = timeline.fixed.iter().filter(move |one| one.job == job && !one.has_happened);
    own.map(|one| begins(&one.fix, &timeline.served))
}

/// "at 06:30", "not before Sat 18:00".
pub fn begins(fix: &Fix, seen: &ZonedDateTime) -> String {
    format!("{} {}", fix.begins.word().replace('-', " "), time_seen_from(&fix.when, seen))
}

/// “mix” of the potato dough.
pub fn step(timeline: &Timeline, job: usize) -> String {
    let job = &timeline.jobs[job];
    format!("“{}” of {}", verb(timeline, job), thing(timeline, job))
}

fn left(timeline: &Timeline, want: Want) -> Option<&Left> {
    timeline.left.iter().find(|left| want == Want::Left(left.at))
}

/// How a wish of the kitchen's gives way, in a language and by the clock alone: for a page.
pub fn gives_way_in(timeline: &Timeline, want: Want, far: HowFar, tongue: Tongue) -> String {
    let by = far.time();
    match want {
        Want::Room(_) | Want::Large(_) => tongue.day_missing(room_in(timeline, want, far, tongue)),
        Want::Fixed(at) => {
            let Fixed { fix, job, .. } = &timeline.fixed[at];
            let job = &timeline.jobs[*job];
            let (verb, thing) = (verb_in(timeline, job, tongue), thing_in(timeline, job, tongue));
            format!("{verb}, {thing}: {}", tongue.fixed(fix.begins, time(&fix.when)))
        }
        Want::Served => tongue.day_served_later(span_in(by, tongue), time(&timeline.served)),
        Want::Left(_) => tongue.day_at_hand(span_in(by, tongue)),
        Want::AtItsBest(at) => {
            let before = &timeline.jobs[timeline.follows[at].before];
            let (verb, thing) = (verb_in(timeline, before, tongue), thing_in(timeline, before, tongue));
            tongue.day_past_its_best(span_in(by, tongue), &verb, thing)
        }
    }
}

/// "2 bowls", "1 bowl of 5 l or more", "1.5 l in the fridge".
fn room_in(timeline: &Timeline, want: Want, far: HowFar, tongue: Tongue) -> String {
    let HowFar::Room(count) = far else { return String::new() };
    let bowls = |count: u32| tongue.day_bowls(count.into(), count.to_string());
    let volume = |room: Volume| tongue.print.volume(room);
    match want {
        Want::Room(Space::Oven) => tongue.day_an_oven().to_owned(),
        Want::Room(Space::Fridge) => tongue.day_fridge_room(volume(Volume::millilitres(100.0 * f64::from(count)))),
        Want::Large(size) => {
            let holds = timeline.place.bowl_sizes.get(size).map(|(holds, _)| volume(*holds)).unwrap_or_default();
            tongue.day_bowls_of(bowls(count.unsigned_abs()), holds)
        }
        _ => bowls(count.unsigned_abs()),
    }
}

/// How a wish gives way in this timeline.
pub fn gives_way(timeline: &Timeline, want: Want, far: HowFar) -> String {
    let by = far.time();
    match want {
        Want::Room(_) | Want::Large(_) => format!("- {} missing", room(timeline, want, far, "")),
        Want::Fixed(at) => {
            let Fixed { fix, job, .. } = &timeline.fixed[at];
            let begin = timeline.entries.iter().find(|entry| entry.job == *job).map(|entry| &entry.begin);
            let begin = begin.map(|begin| time_seen_from(begin, &timeline.served)).unwrap_or_default();
            format!("- {} begins at {begin}, though fixed {}", step(timeline, *job), begins(fix, &timeline.served))
        }
        Want::Served => {
            format!("- served {} later than wished, at {}", span(by), time_seen_from(&timeline.served, &timeline.wanted))
        }
        Want::Left(_) => match left(timeline, want) {
            Some(Left { away, kept: Some((from, to)), .. }) if away.why == Why::Asleep && *to < away.to && *from == away.from => {
                format!("- up at {}, {} before {}", time_seen_from(to, to), span(by), time_seen_from(&away.to, to))
            }
            Some(Left { away, kept: Some((from, to)), .. }) => format!(
                "- {} only from {} to {}, {} less than wished",
                if away.why == Why::Asleep { "asleep" } else { "out" },
                time_seen_from(from, &away.from),
                time_seen_from(to, &away.from),
                span(by)
            ),
            Some(Left { away, .. }) if away.why == Why::Asleep => format!("- no sleep in the night of {}", day(&away.from)),
            Some(Left { away, .. }) => format!("- no leaving the kitchen on {}", day(&away.from)),
            None => format!("- at hand for {} when nobody should be", span(by)),
        },
        Want::AtItsBest(at) => {
            let before = &timeline.jobs[timeline.follows[at].before];
            format!("- {} past its best after “{}” of {}", span(by), verb(timeline, before), thing(timeline, before))
        }
    }
}

/// "2 bowls", "1 bowl of 5 l or more", "1.5 l in the fridge"; "2 more bowls" where they are to be found.
fn room(timeline: &Timeline, want: Want, far: HowFar, more: &str) -> String {
    let HowFar::Room(count) = far else { return String::new() };
    match want {
        Want::Room(Space::Oven) => format!("an{} oven", if more.is_empty() { "" } else { "other" }),
        Want::Room(Space::Fridge) => {
            format!("{}{more} in the fridge", print::volume(Volume::millilitres(100.0 * f64::from(count))))
        }
        Want::Large(size) => format!("{} of {} or more", counted(count.unsigned_abs(), more), holds(timeline, size)),
        _ => counted(count.unsigned_abs(), more),
    }
}

fn counted(bowls: u32, more: &str) -> String {
    format!("{bowls}{more} bowl{}", if bowls == 1 { "" } else { "s" })
}

/// What needs bowls of a size or larger.
fn large(timeline: &Timeline, size: usize) -> String {
    let stays = timeline.stays.iter().filter(|stay| stay.space == Space::Bowls && stay.size >= size);
    let things: BTreeSet<String> = stays.map(|stay| thing(timeline, &timeline.jobs[stay.from])).collect();
    let things: Vec<String> = things.into_iter().collect();
    match &things[..] {
        [first @ .., last] if !first.is_empty() => format!("{} and {last}", first.join(", ")),
        _ => things.join(""),
    }
}

/// What bowls of a size hold, by its place among the kitchen's.
fn holds(timeline: &Timeline, size: usize) -> String {
    timeline.place.bowl_sizes.get(size).map(|(holds, _)| print::volume(*holds)).unwrap_or_default()
}

/// A wish of the conflict as a rule.
fn rule(timeline: &Timeline, want: Want) -> Option<String> {
    match want {
        Want::Room(space) => Some(match space {
            Space::Oven => "the oven for one thing at a time".to_owned(),
            Space::Bowls => format!("no more than {}", counted(timeline.place.bowls.value, "")),
            Space::Fridge => format!("no more than {} in the fridge", print::volume(timeline.place.fridge_room.value)),
        }),
        Want::Large(size) => {
            let count = timeline.place.bowls_from(size).unsigned_abs();
            let (count, holds) = (counted(count, ""), holds(timeline, size));
            Some(format!("no more than {count} of {holds} or more, for {}", large(timeline, size)))
        }
        Want::Fixed(at) => {
            let Fixed { fix, job, .. } = &timeline.fixed[at];
            Some(format!("{} {}", step(timeline, *job), begins(fix, &timeline.served)))
        }
        Want::Served => Some(format!("serving at {}", time_seen_from(&timeline.wanted, &timeline.wanted))),
        Want::Left(_) => {
            let away = &left(timeline, want)?.away;
            let word = if away.why == Why::Asleep { "sleep" } else { "being out" };
            Some(format!("{word} from {} to {}", time_seen_from(&away.from, &away.from), time_seen_from(&away.to, &away.to)))
        }
        Want::AtItsBest(at) => {
            let follows = &timeline.follows[at];
            let before = &timeline.jobs[follows.before];
            let most = follows.most.filter(|most| *most > TimeSpan::ZERO);
            let within = most.map_or_else(|| "at once".to_owned(), |most| format!("within {}", span(most)));
            let after = follows.after.map(|job| &timeline.jobs[job]);
            Some(match after {
                None => format!("{} on the table {within} of “{}”", thing(timeline, before), verb(timeline, before)),
                Some(after) => format!(
                    "{} {within} after “{}” of {}",
                    action(timeline, after).word(),
                    verb(timeline, before),
                    thing(timeline, before)
                ),
            })
        }
    }
}

/// More than that no product is let stand, whatever would be gained.
const NO_LONGER_FOOD: TimeSpan = TimeSpan::hours(1.0);

/// What would help if it alone gave way.
fn would_help(timeline: &Timeline, one: &Against) -> Option<String> {
    let (want, far) = (one.want, one.alone?);
    let by = far.time();
    match want {
        Want::Room(_) | Want::Large(_) => Some(format!("find {}", room(timeline, want, far, " more"))),
        Want::Fixed(at) => {
            let (begin, _) = one.kept.as_ref()?;
            Some(format!("begin {} at {}", step(timeline, timeline.fixed[at].job), time_seen_from(begin, &timeline.served)))
        }
        Want::Served => {
            let later = timeline.wanted.checked_add(SignedDuration::from_secs(by.as_seconds() as i64)).ok()?;
            Some(format!("serve at {}", time_seen_from(&later, &timeline.wanted)))
        }
        Want::Left(_) => Some(kept_less(&left(timeline, want)?.away, one.kept.as_ref(), by)),
        Want::AtItsBest(at) if by <= NO_LONGER_FOOD => {
            let before = &timeline.jobs[timeline.follows[at].before];
            Some(format!("allow {} more after “{}” of {}", span(by), verb(timeline, before), thing(timeline, before)))
        }
        Want::AtItsBest(_) => None,
    }
}

/// "be up at 06:10 on Sunday 29 November, 20 min before 06:30".
fn kept_less(away: &Away, kept: Option<&(ZonedDateTime, ZonedDateTime)>, by: TimeSpan) -> String {
    let (until, there, begin) = match away.why {
        Why::Asleep => ("be up", "sleep", "go to bed"),
        Why::Out => ("be back", "be out", "leave"),
    };
    match kept {
        Some((from, to)) if *from == away.from => {
            format!("{until} at {} on {}, {} before {}", time(to), day(to), span(by), time(&away.to))
        }
        Some((from, to)) if *to == away.to => {
            format!("{begin} at {} on {}, {} after {}", time(from), day(from), span(by), time(&away.from))
        }
        Some((from, to)) => {
            format!("{there} only from {} to {}", time_seen_from(from, &away.from), time_seen_from(to, &away.from))
        }
        None => format!("{there} {} less on {}", span(by), day(&away.from)),
    }
}

/// How good the plan is: proved, or how far from the bound.
pub fn proof(timeline: &Timeline) -> String {
    let reached = timeline.reached.iter().map(Some).chain(std::iter::repeat(None));
    let is_open = |reached: Option<&Reached>| reached.is_none_or(|one| !one.is_proved());
    let open = plan::day::AIMS.into_iter().zip(reached).filter(|(_, reached)| is_open(*reached)).map(|(name, _)| name);
    let open: Vec<&str> = open.collect();
    if open.is_empty() {
        return "Proved: no order on the grid of five minutes is better.".to_owned();
    }
    let first = timeline.reached.iter().zip(plan::day::AIMS).find(|(reached, _)| !reached.is_proved());
    let may_be = first.map_or_else(String::new, |(reached, name)| {
        let gap = 100.0 * f64::from(reached.value - reached.bound) / f64::from(reached.value.abs().max(1));
        format!(" by “{name}” it may be up to {} % better;", print::number(gap, 1))
    });
    format!("Not proved to be the best:{may_be} not looked at to the end: {}.", open.join(", "))
}
