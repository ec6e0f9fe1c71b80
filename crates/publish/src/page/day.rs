//! The day of a formula that states when it is served: a drawing, and what is done when, for the book's kitchen.

use crate::day::{Days, drawing, gives_way, place, rests, verb, what};
use crate::tongue::Tongue;
use jiff::ZonedDateTime;
use maud::{Markup, html};
use plan::day::{Entry, Left, Timeline, Want, Why};

/// The section of a page; times only, since weights follow what its reader sets.
/// A day is worded in English alone, and marked so where the page is not.
pub fn day_section(timeline: &Timeline, tongue: Tongue) -> Markup {
    let amiss: Vec<String> = timeline.unmet.iter().map(|unmet| amiss(timeline, unmet)).collect();
    html! {
        section.hours lang=[(!tongue.is_english()).then_some("en")] aria-labelledby="the-day" {
            h2 #the-day { "The day" }
            p { "On the table at " (clock(&timeline.served)) ". " (place(timeline)) }
            @if !amiss.is_empty() { p { "It cannot be had without: " (amiss.join("; ")) "." } }
            div.scroll tabindex="0" role="region" aria-label="The day, drawn" { (drawing(timeline, Days::Undated)) }
            div.columns {
                @for (before, lines) in days(timeline) {
                    div {
                        h3 { (title(before)) }
                        ol.plain { @for (from, words) in lines { li { b { (from) } span { (words) } } } }
                    }
                }
            }
            p.fine {
                "Planned for the formula as written, in the kitchen of the book: what is set above does not change it. "
                "Times are planned, not measured: look at the dough, not at the clock. Never leave hot fat, and nothing on the heat when nobody is there."
            }
        }
    }
}

type Lines = Vec<(String, String)>;

/// What is done on each day, the first one first; how many days before serving it is.
fn days(timeline: &Timeline) -> Vec<(i32, Lines)> {
    let before = |moment: &ZonedDateTime| {
        let days = timeline.served.date().since(moment.date()).map_or(0, |span| span.get_days());
        days.max(0)
    };
    let entries = timeline.entries.iter().map(|entry| (&entry.begin, 1, told(timeline, entry)));
    let nights = rests(timeline).into_iter().filter(|(from, ..)| **from < timeline.served);
    let nights = nights.map(|(from, to, why)| {
        let word = if why == Why::Asleep { "asleep" } else { "out" };
        (from, 0, format!("{word} until {}", clock(to)))
    });
    let mut all: Vec<(&ZonedDateTime, u8, String)> = entries.chain(nights).collect();
    all.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)));
    let mut days: Vec<(i32, Lines)> = Vec::new();
    for (moment, _, words) in all {
        let before = before(moment);
        if days.last().is_none_or(|(last, _)| *last != before) {
            days.push((before, Vec::new()));
        }
        if let Some((_, lines)) = days.last_mut() {
            lines.push((clock(moment), words));
        }
    }
    days
}

/// "ferment · Potato muffins: overnight sponge, until 06:15".
fn told(timeline: &Timeline, entry: &Entry) -> String {
    let job = &timeline.jobs[entry.job];
    let until = if job.is_work { String::new() } else { format!(", until {}", clock(&entry.end)) };
    format!("{} · {}{until}", verb(timeline, job), what(timeline, job))
}

fn title(before: i32) -> String {
    match before {
        0 => "On the day".to_owned(),
        1 => "The day before".to_owned(),
        days => format!("{days} days before"),
    }
}

/// What gives way, without the names of days.
fn amiss(timeline: &Timeline, unmet: &plan::day::Unmet) -> String {
    let left = timeline.left.iter().find(|left| unmet.want == Want::Left(left.at));
    match left {
        None => gives_way(timeline, unmet.want, unmet.gives_way).trim_start_matches("- ").to_owned(),
        Some(Left { away, kept: Some((from, to)), .. }) if *from == away.from => {
            format!("{} at {}", if away.why == Why::Asleep { "getting up" } else { "being back" }, clock(to))
        }
        Some(Left { away, kept: Some((from, to)), .. }) => {
            let word = if away.why == Why::Asleep { "sleep" } else { "being out" };
            format!("{word} only from {} to {}", clock(from), clock(to))
        }
        Some(Left { away, .. }) if away.why == Why::Asleep => "a night without sleep".to_owned(),
        Some(_) => "staying in the kitchen all day".to_owned(),
    }
}

fn clock(moment: &ZonedDateTime) -> String {
    moment.strftime("%H:%M").to_string()
}
