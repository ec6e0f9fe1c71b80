//! A day's timeline on a page: its tasks, what its wishes have come to, and its lists to tick off.

use super::alternatives::{EXPLAINED, cells, in_words as way_in_words, reason, takes};
use super::prep::{is_told, made_ready, told};
use super::shopping::to_buy;
use super::text::{Hands, cautions, hands, in_words, own_times, place};
use super::words::{day, time, time_seen_from};
use super::{chances, wishes};
use crate::words::Units;
use formula::read::{Larder, Prices};
use jiff::ZonedDateTime;
use maud::{Markup, html};
use plan::alternatives::Alternative;
use plan::day::{Fixed, StepName, Timeline, Wanted};

/// A task as the timeline tells it.
pub struct Task {
    /// Which job it is.
    pub job: usize,
    /// Its day.
    pub day: String,
    /// From when to when.
    pub time: String,
    /// When it begins.
    pub begin: ZonedDateTime,
    /// Whether it goes on already.
    pub is_going: bool,
    /// What hands it needs.
    pub hands: &'static str,
    /// What is done to what, and what is to be known of its time.
    pub words: String,
    /// What it is called where it is told what happened; none where it only makes ready.
    pub step: Option<StepName>,
}

/// The tasks in order of time.
#[must_use]
pub fn tasks(timeline: &Timeline) -> Vec<Task> {
    let one = |entry: &plan::day::Entry| {
        let job = &timeline.jobs[entry.job];
        let formula = &timeline.dishes[job.dish].formula;
        let step = StepName {
            formula: Some(formula.name.clone()),
            stage: formula.stage(job.at).name.clone(),
            step: (job.step + 1).to_string(),
        };
        Task {
            job: entry.job,
            day: day(&entry.begin),
            time: format!("{}–{}", time(&entry.begin), time_seen_from(&entry.end, &entry.begin)),
            begin: entry.begin.clone(),
            is_going: entry.is_going,
            hands: match hands(timeline, entry) {
                Hands::AllTheWhile => "hands all the while",
                Hands::ToSetItGoing => "hands to set it going",
                Hands::None => "by itself",
            },
            words: in_words(timeline, entry),
            step: job.is_step().then_some(step),
        }
    };
    timeline.entries.iter().map(one).collect()
}

/// What is fixed: "mix" of the potato dough, not before 06:30.
#[must_use]
pub fn fixed(timeline: &Timeline, one: &Fixed) -> String {
    let has_happened = if one.has_happened { ", which has happened" } else { "" };
    format!("{} {}{has_happened}", wishes::step(timeline, one.job), wishes::begins(&one.fix, &timeline.served))
}

/// Which wishes give way and why, what would help, what was seen, how sure it is, and the cautions.
#[must_use]
pub fn come_to(timeline: &Timeline) -> Markup {
    html! {
        @for line in own_times(timeline) { p.fine { (line) } }
        @for line in wishes::learnt(timeline) { p { (line) } }
        (lines(&wishes::told(timeline)))
        (lines(&chances::told(timeline)))
        p.fine { (place(timeline)) " " (wishes::proof(timeline)) }
        @for line in cautions(timeline) { p.fine { (line) } }
    }
}

/// Sentences, and those that follow each other as items as a list.
fn lines(told: &[String]) -> Markup {
    let is_item = |line: &String| line.starts_with("- ");
    html! {
        @for group in told.chunk_by(|a, b| is_item(a) && is_item(b)) {
            @if group.iter().all(is_item) {
                ul { @for item in group { li { (item.trim_start_matches("- ")) } } }
            } @else { @for line in group { p { (line) } } }
        }
    }
}

/// What to do by day and hour, with the weights, to tick off.
#[must_use]
pub fn prep_markup(timeline: &Timeline, units: Units) -> Markup {
    let mut days: Vec<(String, Vec<Markup>)> = Vec::new();
    for entry in timeline.entries.iter().filter(|entry| is_told(timeline, entry)) {
        let one = told(timeline, entry, units);
        if days.last().is_none_or(|(day, _)| *day != one.day) {
            days.push((one.day.clone(), Vec::new()));
        }
        let words = one.words.unwrap_or_else(|| made_ready(timeline, &timeline.jobs[entry.job], units.tongue));
        let item = html! {
            label { input type="checkbox"; span { b { (one.time) } " " (one.what) } }
            @if !one.weights.is_empty() { p.weights { (one.weights.join("; ")) } }
            p { (words) }
        };
        days.last_mut().into_iter().for_each(|(_, items)| items.push(item.clone()));
    }
    html! { @for (day, items) in &days { h2 { (day) } ul.ticked { @for item in items { li { (item) } } } } }
}

/// What to buy, by aisle, to tick off.
#[must_use]
pub fn shopping_markup(timeline: &Timeline, prices: &Prices, larder: &Larder) -> Markup {
    html! {
        @for (aisle, lines) in to_buy(timeline, prices, larder) {
            h2 { (aisle) }
            ul.ticked { @for line in lines { li { label { input type="checkbox"; span { (line) } } } } }
        }
        @if let Some(on) = larder.on { p.fine { "The larder was counted on " (on) "." } }
    }
}

/// The ways to make the one formula, side by side; `lead` is where one is planned.
#[must_use]
pub fn alternatives_markup(all: &[Alternative], wanted: &Wanted, lead: &dyn Fn(&str) -> String) -> Markup {
    html! {
        div.scroll tabindex="0" role="group" aria-label="The ways side by side" {
            table {
                thead { tr { @for head in ["way", "begins", "hands on", "up", "served", "in time", "past its best"] { th scope="col" { (head) } } } }
                tbody {
                    @for one in all {
                        @if let Ok(day) = &one.day {
                            @let told = cells(one.way, day, wanted);
                            tr { th scope="row" { a href=(lead(one.way.word())) { (told[0]) } } @for cell in &told[1..] { td { (cell) } } }
                        }
                    }
                }
            }
        }
        @for one in all {
            h3 { (way_in_words(one.way)) @if one.is_as_written { ", as the formula is written" } }
            @match &one.day {
                Ok(day) => { ul { @for line in takes(day) { li { (line.trim_start_matches("- ")) } } } }
                Err(why) => { p { "Not so: " (reason(why)) "." } }
            }
        }
        p.fine { (EXPLAINED.split(" `--way`").next().unwrap_or_default()) }
    }
}
