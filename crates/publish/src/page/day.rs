//! The day of a formula that states when it is served: a drawing, and what is done when, for the book's kitchen.

use crate::day::{Days, drawing, gives_way_in, place_in, rests, verb_in, what_in};
use crate::tongue::Tongue;
use jiff::ZonedDateTime;
use maud::{Markup, html};
use plan::day::{Entry, Left, Timeline, Want, Why};

/// The section of a page; times only, since weights follow what its reader sets.
pub fn day_section(timeline: &Timeline, tongue: Tongue) -> Markup {
    let amiss: Vec<String> = timeline.unmet.iter().map(|unmet| amiss(timeline, unmet, tongue)).collect();
    html! {
        section.hours aria-labelledby="the-day" {
            h2 #the-day { (tongue.day_the_day()) }
            p { (tongue.day_on_the_table(clock(&timeline.served))) ". " (place_in(timeline, tongue)) }
            @if !amiss.is_empty() { p { (tongue.day_cannot_be(amiss.join("; "))) } }
            div.scroll tabindex="0" role="region" aria-label=(tongue.day_drawn()) { (drawing(timeline, Days::Undated, tongue)) }
            div.columns {
                @for (before, lines) in days(timeline, tongue) {
                    div {
                        h3 { (title(before, tongue)) }
                        ol.plain { @for (from, words) in lines { li { b { (from) } span { (words) } } } }
                    }
                }
            }
            p.fine { (tongue.day_is_planned()) }
        }
    }
}

type Lines = Vec<(String, String)>;

/// What is done on each day, the first one first; how many days before serving it is.
fn days(timeline: &Timeline, tongue: Tongue) -> Vec<(i32, Lines)> {
    let before = |moment: &ZonedDateTime| {
        let days = timeline.served.date().since(moment.date()).map_or(0, |span| span.get_days());
        days.max(0)
    };
    let entries = timeline.entries.iter().map(|entry| (&entry.begin, 1, told(timeline, entry, tongue)));
    let nights = rests(timeline).into_iter().filter(|(from, ..)| **from < timeline.served);
    let nights = nights.map(|(from, to, why)| (from, 0, tongue.away_until(why, clock(to))));
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
fn told(timeline: &Timeline, entry: &Entry, tongue: Tongue) -> String {
    let job = &timeline.jobs[entry.job];
    let until = if job.is_work { String::new() } else { format!(", {}", tongue.day_until(clock(&entry.end))) };
    format!("{} · {}{until}", verb_in(timeline, job, tongue), what_in(timeline, job, tongue))
}

fn title(before: i32, tongue: Tongue) -> String {
    match before {
        0 => tongue.day_of_serving().to_owned(),
        days => tongue.days_before(f64::from(days), days.to_string()),
    }
}

/// What gives way, without the names of days.
fn amiss(timeline: &Timeline, unmet: &plan::day::Unmet, tongue: Tongue) -> String {
    let left = timeline.left.iter().find(|left| unmet.want == Want::Left(left.at));
    match left {
        None => gives_way_in(timeline, unmet.want, unmet.gives_way, tongue),
        Some(Left { away, kept: Some((from, to)), .. }) if *from == away.from => match away.why {
            Why::Asleep => tongue.day_getting_up(clock(to)),
            Why::Out => tongue.day_being_back(clock(to)),
        },
        Some(Left { away, kept: Some((from, to)), .. }) => match away.why {
            Why::Asleep => tongue.day_sleep_only(clock(from), clock(to)),
            Why::Out => tongue.day_out_only(clock(from), clock(to)),
        },
        Some(Left { away, .. }) if away.why == Why::Asleep => tongue.day_a_night_without_sleep().to_owned(),
        Some(_) => tongue.day_all_day_in_the_kitchen().to_owned(),
    }
}

fn clock(moment: &ZonedDateTime) -> String {
    moment.strftime("%H:%M").to_string()
}
