//! The ways in which a formula can be spread over the day, side by side.

use super::wishes;
use super::words::{span, time, time_seen_from};
use crate::words::{small, wrap};
use plan::alternatives::{Alternative, Change, NotSo, NotThatWay, Planned, Way};
use plan::day::{Refusal, Wanted};
use quantity::print;
use serde_json::{Value, json};

/// The ways as text of that width: a table, then what each takes.
#[must_use]
pub fn alternatives(all: &[Alternative], wanted: &Wanted, width: usize) -> String {
    let titles: Vec<&str> = wanted.formulas.iter().map(|formula| formula.head.title.as_str()).collect();
    let head = format!("{}, on the table at {}", wanted.serve.strftime("%A %-d %B %Y"), time(&wanted.serve));
    let mut out = format!("{head}\n{}\n{}", "═".repeat(head.chars().count()), wrap(&titles.join(", "), width));
    out.push_str("\nWay        Begins     Hands on     Up     Served  In time  Past its best\n");
    for one in all {
        if let Ok(day) = &one.day {
            out.push_str(&row(one.way, day, wanted));
        }
    }
    for one in all {
        let written = if one.is_as_written { ", as the formula is written" } else { "" };
        let heading = format!("{}{written}", in_words(one.way));
        out.push_str(&format!("\n{heading}\n{}\n", "─".repeat(heading.chars().count())));
        let told = match &one.day {
            Ok(day) => takes(day),
            Err(why) => vec![format!("Not so: {}.", reason(why))],
        };
        told.iter().for_each(|line| out.push_str(&wrap(line, width)));
    }
    out.push('\n');
    out.push_str(&wrap(EXPLAINED, width));
    out
}

pub(super) const EXPLAINED: &str = "In time: the share of a thousand kitchens, as quick and as slow as the forecast allows, that serve within 10 min of the planned time; past its best: the share in which something waits longer than it should. Doses are by the course of the ferment: bake once before many. `--way` plans one of them.";

fn row(way: Way, day: &Planned, wanted: &Wanted) -> String {
    let [way, begins, hands, up, served, in_time, past] = cells(way, day, wanted);
    format!("{way:<9}  {begins:<9}  {hands:<11}  {up:<6} {served:<6}  {in_time:<7}  {past}\n")
}

/// What a row tells of a way: its word, when it begins, hands on, up, served, in time, past its best.
pub(super) fn cells(way: Way, day: &Planned, wanted: &Wanted) -> [String; 7] {
    let share = |count: usize| format!("{} %", print::number(100.0 * count as f64 / day.tries.kitchens as f64, 0));
    let begins = day.begins().map(|begins| time_seen_from(begins, &wanted.serve)).unwrap_or_default();
    let up = day.up().map_or_else(|| "–".to_owned(), |(up, _)| up.map_or("no bed".to_owned(), time));
    [
        way.word().to_owned(),
        begins,
        span(day.hands_on()),
        up,
        time(&day.timeline.served),
        share(day.tries.in_time),
        share(day.tries.past_best),
    ]
}

pub(super) const fn in_words(way: Way) -> &'static str {
    match way {
        Way::SameDay => "In one go, without a night's rise",
        Way::Overnight => "A preferment overnight at room temperature",
        Way::Cold => "Risen long and cold",
    }
}

/// What it takes: what is other than written, and which wishes give way.
pub(super) fn takes(day: &Planned) -> Vec<String> {
    let mut told: Vec<String> = day.changes.iter().map(change).map(|change| format!("- {change}")).collect();
    told.extend(day.minded.iter().map(|minded| format!("- mind: {minded}")));
    told.extend(wishes::giving_way(&day.timeline));
    if told.is_empty() {
        told.push("Every wish is granted.".to_owned());
    }
    told
}

fn change(change: &Change) -> String {
    match change {
        Change::MixedAtOnce(title) => format!("the {} is mixed with the rest at once", small(title)),
        Change::Prefermented(title, kind, yeast) => {
            let with = yeast.iter().map(|(title, mass)| format!("{} {}", print::mass(*mass), small(title)));
            let with: Vec<String> = with.collect();
            format!("part of the {} is mixed beforehand as a {}, with {}", small(title), kind.word(), with.join(" and "))
        }
        Change::NotRetarded(title) => format!("the {} is not kept in the fridge", small(title)),
        Change::RisesCold(title, time) => format!("the {} rises in the fridge, {}", small(title), print::time(*time)),
        Change::Retimed(stage, action, time) => {
            format!("“{}” in {} then takes {}", action.word(), small(stage), print::time(*time))
        }
        Change::Dosed(stage, line, before, now, share) => format!(
            "{} in the {}: {} instead of {} ({} of its flour)",
            small(line),
            small(stage),
            print::mass(*now),
            print::mass(*before),
            print::bakers_percent(*share)
        ),
    }
}

/// Why a formula is not made that way, within a sentence.
#[must_use]
pub fn reason(why: &NotThatWay) -> String {
    match why {
        NotThatWay::Formula(NotSo::NothingToDose) => {
            "no dough of the formula is raised by yeast weighed into it, so that there is nothing to dose; a culture keeps its own time".to_owned()
        }
        NotThatWay::Formula(NotSo::Several(titles)) => {
            format!("it has more than one preferment ({}); mix one of them at once with `exchange` first", titles.join(", "))
        }
        NotThatWay::Formula(NotSo::NoRise(title)) => {
            format!("no step of the {} says how far it rises, such as until = \"doubled\"", small(title))
        }
        NotThatWay::Formula(NotSo::Exchange(unfit)) => unfit.to_string(),
        NotThatWay::Formula(NotSo::Dose(why)) => why.to_string(),
        NotThatWay::Day(Refusal::InThePast) => "it should have been begun before now".to_owned(),
        NotThatWay::Day(Refusal::Impossible | Refusal::TooLong) => "there is no order in which it can be done in time".to_owned(),
        NotThatWay::Day(Refusal::Unknown(_)) => "a step that is fixed is none of it".to_owned(),
        NotThatWay::Day(Refusal::Stopped) => "no order was found in the time there was; give it longer with --patience".to_owned(),
        NotThatWay::Day(Refusal::TooMany(_) | Refusal::NothingToDo | Refusal::Unused(..) | Refusal::FarOff(_)) => "there is nothing to plan".to_owned(),
    }
}

/// The ways as JSON; times in minutes, shares from 0 to 1, weights in gram.
#[must_use]
pub fn alternatives_json(all: &[Alternative]) -> Value {
    all.iter()
        .map(|one| match &one.day {
            Err(why) => json!({ "way": one.way.word(), "as-written": one.is_as_written, "not-so": reason(why) }),
            Ok(day) => json!({
                "way": one.way.word(),
                "as-written": one.is_as_written,
                "changes": day.changes.iter().map(change).collect::<Vec<_>>(),
                "minded": day.minded,
                "begins": day.begins().map(ToString::to_string),
                "hands-on-minutes": day.hands_on().as_minutes(),
                "up": day.up().and_then(|(up, _)| up.map(ToString::to_string)),
                "up-wished": day.up().map(|(_, wished)| wished.to_string()),
                "served": day.timeline.served.to_string(),
                "in-time": day.tries.in_time as f64 / day.tries.kitchens as f64,
                "past-its-best": day.tries.past_best as f64 / day.tries.kitchens as f64,
            }),
        })
        .collect()
}
