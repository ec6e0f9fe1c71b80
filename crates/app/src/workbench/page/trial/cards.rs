//! The cards of a trial: a stage each, with what is weighed and what is done, in the order of the clock.

use super::figures::value;
use crate::logbook::Logbook;
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use maud::{Markup, html};
use publish::logged::{Expected, Moment, Weight};
use quantity::{Between, TimeSpan, print};

/// A field for a figure: its key, what it is called, its unit, and whether it is read while something rises.
struct Field {
    key: &'static str,
    called: &'static str,
    unit: &'static str,
}

const FIELDS: [Field; 14] = [
    Field { key: "height", called: "height in the jar", unit: "mm" },
    Field { key: "temperature", called: "how warm", unit: "°C" },
    Field { key: "doubled-after", called: "doubled after", unit: "min" },
    Field { key: "ripe-after", called: "ripe after", unit: "min" },
    Field { key: "room", called: "the air there", unit: "°C" },
    Field { key: "lasted", called: "took in all", unit: "min" },
    Field { key: "core", called: "the middle", unit: "°C" },
    Field { key: "time", called: "took in all", unit: "min" },
    Field { key: "pieces", called: "pieces", unit: "" },
    Field { key: "bake-loss", called: "lost in baking", unit: "%" },
    Field { key: "surface", called: "griddle or fat", unit: "°C" },
    Field { key: "side-time", called: "a side", unit: "min" },
    Field { key: "thickness", called: "how thick", unit: "mm" },
    Field { key: "ph", called: "pH", unit: "" },
];

/// What is noted seldom stands behind a door.
const SELDOM: [&str; 5] = ["ph", "surface", "side-time", "thickness", "ripe-after"];

/// The fields of a step.
fn fields(one: &Moment) -> impl Iterator<Item = &'static Field> {
    FIELDS.iter().filter(|field| one.noted.contains(&field.key))
}

/// A card for each stage, in the order in which they begin.
pub fn all(logbook: &Logbook, visitor: &Visitor, expected: &Expected) -> Markup {
    let mut stages: Vec<&str> = Vec::new();
    for stage in
        expected.moments.iter().map(|one| one.stage.as_str()).chain(expected.weights.iter().map(|one| one.stage.as_str()))
    {
        if !stages.contains(&stage) {
            stages.push(stage);
        }
    }
    html! {
        @for stage in stages {
            section.stage aria-label=(stage) {
                h2 { (stage) }
                @for one in expected.weights.iter().filter(|one| one.stage == stage) { (weight(logbook, visitor, one)) }
                @for one in expected.moments.iter().filter(|one| one.stage == stage) { (step(logbook, visitor, one)) }
            }
        }
    }
}

/// A form of one figure: the script sends it by itself, and keeps it while there is no network.
fn form(logbook: &Logbook, visitor: &Visitor, figure: &str, reading: bool, inside: &Markup) -> Markup {
    let noted = if reading { String::new() } else { value(logbook, figure) };
    html! {
        form.figure method="post" action={ "/trial/" (logbook.name) "/note" } data-figure=(figure) data-reading[reading] {
            (token(visitor))
            input type="hidden" name="figure" value=(figure);
            (inside)
            output { @if !noted.is_empty() { "✓ " (noted) } }
        }
    }
}

fn weight(logbook: &Logbook, visitor: &Visitor, one: &Weight) -> Markup {
    let figure = format!("{}/amount", one.name);
    // What the bowl of a plan gets stands in place of what the formula says; a tap never notes what nobody meant.
    let (tapped, by) = match &one.bowl {
        Some(level) => (level.mass.map(print::mass), "as this bowl says"),
        None => (Some(print::mass(one.mass)), "as the formula says"),
    };
    let inside = html! {
        span.called {
            (one.title)
            @if let Some(level) = &one.bowl { span.fine { " this bowl: " (level.told) "; the formula: " (print::mass(one.mass)) } }
        }
        @if let Some(tapped) = tapped {
            button.as-said name="as" value=(tapped) aria-label={ (tapped) " " (one.title) " in " (one.stage) ", " (by) } { (tapped) }
        }
        input name="amount" inputmode="decimal" autocomplete="off" aria-label={ (one.title) " in " (one.stage) ", gram" };
        input type="hidden" name="unit" value="g";
        button.note aria-label={ "Note " (one.title) " in " (one.stage) } { "Note" }
    };
    form(logbook, visitor, &figure, false, &inside)
}

fn step(logbook: &Logbook, visitor: &Visitor, one: &Moment) -> Markup {
    let (waits, is_rise) = (one.noted.contains(&"lasted"), one.noted.contains(&"height"));
    let timed = if waits { Some("lasted") } else { one.noted.contains(&"time").then_some("time") };
    html! {
        div.step data-step=(one.name) data-timed=[timed] {
            h3 { (one.called) }
            p.fine { (expected_words(one)) }
            @if timed.is_some() {
                p.timer hidden {
                    button.start type="button" aria-label={ "Start: " (spoken(one)) } { "Start" }
                    button.stop type="button" disabled aria-label={ "Stop and note: " (spoken(one)) } { "Stop and note" }
                    span.clock role="timer" aria-label={ "How long so far: " (spoken(one)) } {}
                }
            }
            @if one.noted.contains(&"height") {
                p.after { label { "A reading, so many minutes after it began: " input name="after" inputmode="decimal" autocomplete="off" data-after aria-label={ "Minutes after it began: " (spoken(one)) }; } }
            }
            @for field in fields(one).filter(|field| !SELDOM.contains(&field.key)) { (figure(logbook, visitor, one, field, is_rise)) }
            @if fields(one).any(|field| SELDOM.contains(&field.key)) {
                details {
                    summary { "More" }
                    @for field in fields(one).filter(|field| SELDOM.contains(&field.key)) { (figure(logbook, visitor, one, field, is_rise)) }
                }
            }
        }
    }
}

fn figure(logbook: &Logbook, visitor: &Visitor, one: &Moment, field: &Field, is_rise: bool) -> Markup {
    let reading = is_rise && matches!(field.key, "height" | "temperature" | "ph");
    let is_now = matches!(field.key, "doubled-after" | "ripe-after");
    let inside = html! {
        span.called { (field.called) @if !field.unit.is_empty() { span.fine { ", " (field.unit) } } }
        @if is_now { button.now type="button" hidden aria-label={ "now: " (spoken(one)) ", " (field.called) } { "now" } }
        input name="amount" inputmode="decimal" autocomplete="off" aria-label={ (spoken(one)) ", " (field.called) " " (field.unit) };
        input type="hidden" name="unit" value=(field.unit);
        button.note aria-label={ "Note " (spoken(one)) ", " (field.called) } { "Note" }
    };
    form(logbook, visitor, &format!("{}/{}", one.name, field.key), reading, &inside)
}

/// A step as somebody says it who does not see under which heading it stands.
fn spoken(one: &Moment) -> String {
    format!("{} of {}", one.called, one.stage)
}

fn expected_words(one: &Moment) -> String {
    let minutes = one.begins.as_minutes().round() as i64;
    let begins = format!("begins {}:{:02} after the first", minutes / 60, minutes % 60);
    let lasts = if one.lasts > TimeSpan::ZERO {
        format!(", takes {}", print::time(print::rounded_time(Between::just(one.lasts))))
    } else {
        String::new()
    };
    let range = one.range.map(|range| format!(", {}{}", print::time(print::rounded_time(range)), one.learnt)).unwrap_or_default();
    format!("{begins}{lasts}{range}")
}

/// A note in words, and a photograph.
pub fn words(logbook: &Logbook, visitor: &Visitor) -> Markup {
    html! {
        section.stage aria-label="In words and pictures" {
            h2 { "In words and pictures" }
            form.words method="post" action={ "/trial/" (logbook.name) "/note" } {
                (token(visitor))
                label for="words" { "A note, as long as you would speak it" }
                textarea #words name="words" rows="4" maxlength="4000" {}
                button.note aria-label="Note these words" { "Note" }
                output {}
            }
            form.photograph hidden {
                label { "A photograph " input type="file" accept="image/*" capture="environment" name="file"; }
                label { "It shows " input name="shows" list="shown" maxlength="60" value="crumb" autocomplete="off"; }
                datalist #shown { option value="crumb"; option value="crust"; option value="slice"; option value="jar"; }
                label { "from edge to edge " input name="across" inputmode="decimal" autocomplete="off"; " mm" }
                button.note aria-label="Note the photograph" { "Note" }
                output {}
            }
        }
    }
}
