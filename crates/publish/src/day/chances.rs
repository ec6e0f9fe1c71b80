//! How a day fares in a thousand kitchens: how often it is in time, where there is slack, and what to look at when.

use super::words::{about, between, span, thing, time_seen_from, verb};
use crate::words::small;
use jiff::SignedDuration;
use plan::day::{Entry, Timeline, Told, Tries, Want};
use quantity::{TimeSpan, print};
use std::collections::BTreeMap;

/// So many kitchens are tried.
const KITCHENS: usize = 1000;
/// What waits longer than that needs no look by the clock.
const LONG: TimeSpan = TimeSpan::hours(1.0);

/// How often it would be served in time, where there is slack, and what to look at: a sentence a line.
pub fn told(timeline: &Timeline) -> Vec<String> {
    let tried = plan::day::tries(timeline, KITCHENS);
    let mut lines = vec![in_time(timeline, &tried)];
    lines.extend(amiss(timeline, &tried));
    lines.push(slack(timeline, &tried));
    lines.extend(timeline.entries.iter().filter_map(|entry| look(timeline, entry, &tried)));
    lines
}

fn in_time(timeline: &Timeline, tried: &Tries) -> String {
    let is_late = |span: TimeSpan| span >= TimeSpan::minutes(1.0);
    let half = if is_late(tried.late.0) { format!("{} late", about(tried.late.0)) } else { "in time".to_owned() };
    let worst = if is_late(tried.late.1) {
        format!("one in twenty {} late or more", about(tried.late.1))
    } else {
        "fewer than one in twenty late at all".to_owned()
    };
    format!(
        "Tried in {} kitchens as quick and as slow as the forecast allows: {} serve within 10 min of {}; half of them {half}, {worst}.",
        tried.kitchens,
        share(tried.in_time, tried),
        time_seen_from(&timeline.served, &timeline.served),
    )
}

/// What else goes amiss in some of them.
fn amiss(timeline: &Timeline, tried: &Tries) -> Option<String> {
    // What is past its best already as planned is told among the wishes.
    let is_planned = timeline.unmet.iter().any(|unmet| matches!(unmet.want, Want::AtItsBest(_)));
    let told = [
        (if is_planned { 0 } else { tried.past_best }, "something waits longer than it is at its best"),
        (tried.crowded, "bowls, fridge or oven are fuller for a while than there is room for"),
    ];
    let told = told.into_iter().filter(|(count, _)| *count > 0).map(|(count, what)| format!("in {} {what}", share(count, tried)));
    let told: Vec<String> = told.collect();
    (!told.is_empty()).then(|| format!("Of them {}.", told.join(", ")))
}

fn share(count: usize, tried: &Tries) -> String {
    let share = 100.0 * count as f64 / tried.kitchens.max(1) as f64;
    format!("{} %", print::number(share, if share > 0.0 && share < 1.0 { 1 } else { 0 }))
}

/// By how much each component may be late before serving is: what it has least slack for.
fn slack(timeline: &Timeline, tried: &Tries) -> String {
    let mut least: BTreeMap<(usize, usize), TimeSpan> = BTreeMap::new();
    for entry in &timeline.entries {
        let job = &timeline.jobs[entry.job];
        let slack = least.entry((job.dish, job.at.0)).or_insert(tried.slack[entry.job]);
        *slack = slack.min(tried.slack[entry.job]);
    }
    let title = |(dish, component): (usize, usize)| small(&timeline.dishes[dish].formula.components[component].title);
    let (some, none): (Vec<_>, Vec<_>) = least.into_iter().partition(|(_, slack)| *slack > TimeSpan::ZERO);
    let some: Vec<String> = some.into_iter().map(|(at, slack)| format!("{} {}", title(at), span(slack))).collect();
    let none: Vec<String> = none.into_iter().map(|(at, _)| title(at)).collect();
    if some.is_empty() {
        return "There is no slack: whatever is late moves serving.".to_owned();
    }
    let some = some.join(", ");
    let none = if none.is_empty() { String::new() } else { format!("; none for {}", none.join(", ")) };
    format!("Slack before serving moves: {some}{none}.")
}

/// When to look at something that rises, and by when it must have.
fn look(timeline: &Timeline, entry: &Entry, tried: &Tries) -> Option<String> {
    let job = &timeline.jobs[entry.job];
    if job.span.from != Told::Foreseen || job.span.leeway > LONG {
        return None;
    }
    let after = |span: TimeSpan| entry.begin.checked_add(SignedDuration::from_secs(span.as_seconds() as i64)).ok();
    let (from, due) = (after(job.span.early)?, after(between(&entry.begin, &entry.end) + tried.slack[entry.job])?);
    if between(&entry.begin, &due) >= job.span.late {
        return None;
    }
    let halfway = timeline.dishes[job.dish].halfway(job).and_then(|(half, share)| Some((after(half)?, share)));
    let thing = thing(timeline, job);
    let halfway = halfway.map_or_else(String::new, |(when, share)| {
        let when = time_seen_from(&when, &entry.begin);
        format!("at {when} {thing} should have risen by {}, else move to a warmer place; ", print::percent(share, 0))
    });
    Some(format!(
        "- {halfway}look at {thing} from {}: if “{}” is not done by {}, serving moves",
        time_seen_from(&from, &entry.begin),
        verb(timeline, job),
        time_seen_from(&due, &entry.begin),
    ))
}
