//! The controls with which a reader fits a page to a kitchen; hidden where no script brings them to life.

use super::{Reader, rooms, size};
use crate::words::{Units, spoons_name};
use formula::Formula;
use formula::read::{BookSettings, EggSize, Group};
use maud::{Markup, html};
use quantity::SpoonSystem;

/// The controls of a formula's page.
#[must_use]
pub fn controls(formula: &Formula, settings: &BookSettings, reader: &Reader) -> Markup {
    html! {
        section #kitchen aria-label="Fit to your kitchen" hidden {
            div.tools {
                button type="button" #across { "From across the room" }
                button type="button" #awake aria-pressed="false" hidden { "Keep the screen on" }
                button type="button" #afresh hidden { "As published" }
            }
            details {
                summary { "Fit it to your kitchen" }
                form {
                    (batch(formula))
                    (measures(formula, settings))
                    (flours())
                    (room(reader))
                    (ways(reader))
                }
            }
            details {
                summary { "By the clock" }
                ol #clock {}
            }
            p #changed role="status" {}
        }
    }
}

fn batch(formula: &Formula) -> Markup {
    let Some(main) = formula.components.first() else { return html! {} };
    let counted = main.yields.pieces.is_some();
    html! {
        fieldset {
            legend { "How much" }
            @if counted {
                label { span { "How many " (main.yields.piece.1) } input name="pieces" type="number" min="0.5" max="10000" step="any" inputmode="decimal"; }
                label { span { "Each, raw, g" } input name="each" type="number" min="1" max="10000" step="any" inputmode="decimal"; }
            }
            label { span { "Times the recipe" } input name="times" type="number" min="0.05" max="1000" step="any" inputmode="decimal"; }
            @if size::tin(formula).is_some() {
                label { span { "My tin" } select name="tin" {
                    option value="" { "as written" }
                    option value="box" { "oblong" }
                    option value="round" { "round" }
                    option value="volume" { "by volume" }
                } }
                span.tin hidden {
                    label data-for="box" { span { "Long, cm" } input name="long" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="box" { span { "Wide, cm" } input name="wide" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="round" { span { "Across, cm" } input name="round" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="box round" { span { "High, cm" } input name="high" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="volume" { span { "Holds, ml" } input name="holds" type="number" min="10" max="100000" step="any" inputmode="decimal"; }
                    label data-for="box round volume" { span { "How many tins" } input name="tins" type="number" min="1" max="1000" step="1" inputmode="numeric"; }
                }
            }
        }
    }
}

fn measures(formula: &Formula, settings: &BookSettings) -> Markup {
    let units = Units::of(settings);
    let has_egg = formula.lines().any(|(_, line)| line.ingredient().is_some_and(|one| one.group == Group::Egg));
    html! {
        fieldset {
            legend { "Measures" }
            label { span { "Amounts" } select name="amounts" {
                option value="" { "grams" }
                option value="spoons" { "cups, spoons" }
            } }
            label { span { "Whose cups" } select name="spoons" {
                @for system in SpoonSystem::ALL {
                    option value=(system.name()) selected[system == units.household()] {
                        (quantity::print::capital(spoons_name(system)))
                    }
                }
            } }
            label { span { "Degrees" } select name="degrees" {
                @if units.is_american() { option value="" { "°C and °F" } option value="c" { "°C" } } @else { option value="" { "°C" } }
                option value="f" { "°F" }
            } }
            @if has_egg {
                label { span { "My eggs" } select name="eggs" {
                    option value="" { "as written" }
                    @for word in EggSize::WORDS { option value=(word) { (egg_title(word)) } }
                } }
            }
        }
    }
}

/// "US large", "size L".
fn egg_title(word: &str) -> String {
    match word.chars().next() {
        Some(first) if first.is_lowercase() => format!("US {}", word.replace('-', " ")),
        _ => format!("size {word}"),
    }
}

/// Filled by the page from what its flours are.
fn flours() -> Markup {
    html! {
        fieldset #flours hidden {
            legend { "My flour" }
            p.fine { "Protein as the bag gives it, for 100 g. The liquid follows; hold some back and judge by the dough." }
        }
    }
}

fn room(reader: &Reader) -> Markup {
    let (from, to) = (rooms::COLDEST, rooms::WARMEST);
    html! {
        fieldset {
            legend { "Room and clock" }
            @if reader.ferments {
                div.room {
                    label { span { "My room" } input name="room" type="range" min=(from) max=(to) step="0.5"; }
                    output name="shown" {}
                }
                button type="button" name="no-room" hidden { "as the method says" }
                @if let Some(learnt) = &reader.learnt { p.fine { (learnt) } }
            }
            label { span { "Served at" } input name="serve" type="time"; }
            label { span { "or begun at" } input name="begin" type="time"; }
        }
    }
}

fn ways(reader: &Reader) -> Markup {
    html! {
        @if !reader.ways.is_empty() {
            fieldset.ways {
                legend { "What raises it" }
                label { input type="radio" name="way" value="" checked; span { "as the formula says" } }
                @for way in &reader.ways { label { input type="radio" name="way" value=(way.key); span { (quantity::print::capital(&way.title)) } } }
                @for way in &reader.ways {
                    div.told data-told=(way.key) hidden {
                        @if !way.minded.is_empty() { p { b { "To mind: " } (way.minded.join("; ")) "." } }
                        @if !way.lost.is_empty() { p { b { "Not kept: " } (way.lost.join("; ")) "." } }
                    }
                }
            }
        }
    }
}
