//! The controls with which a reader fits a page to a kitchen; hidden where no script brings them to life.

use super::{Reader, rooms, size};
use crate::tongue::Tongue;
use crate::words::{Units, piece_words};
use formula::Formula;
use formula::read::{BookSettings, EggSize, Group};
use maud::{Markup, html};
use quantity::SpoonSystem;

/// The controls of a formula's page.
#[must_use]
pub fn controls(formula: &Formula, settings: &BookSettings, reader: &Reader) -> Markup {
    let tongue = Tongue::of(&settings.language);
    html! {
        section #kitchen aria-label=(tongue.fit_to_your_kitchen()) hidden {
            div.tools {
                button type="button" #across { (tongue.across_the_room()) }
                button type="button" #awake aria-pressed="false" hidden { (tongue.keep_the_screen_on()) }
                button type="button" #afresh hidden { (tongue.as_published()) }
            }
            details {
                summary { (tongue.fit_it()) }
                form {
                    (batch(formula, tongue))
                    (measures(formula, settings))
                    (flours(tongue))
                    (room(reader, tongue))
                    (ways(reader, tongue))
                }
            }
            details {
                summary { (tongue.by_the_clock()) }
                ol #clock {}
            }
            p #changed role="status" {}
        }
    }
}

fn batch(formula: &Formula, tongue: Tongue) -> Markup {
    let Some(main) = formula.components.first() else { return html! {} };
    let counted = main.yields.pieces.is_some();
    html! {
        fieldset {
            legend { (tongue.how_much()) }
            @if counted {
                label { span { (tongue.how_many(piece_words(main, tongue).1)) } input name="pieces" type="number" min="0.5" max="10000" step="any" inputmode="decimal"; }
                label { span { (tongue.each_raw_grams()) } input name="each" type="number" min="1" max="10000" step="any" inputmode="decimal"; }
            }
            label { span { (tongue.times_the_recipe()) } input name="times" type="number" min="0.05" max="1000" step="any" inputmode="decimal"; }
            @if size::tin(formula).is_some() {
                label { span { (tongue.my_tin()) } select name="tin" {
                    option value="" { (tongue.as_written()) }
                    option value="box" { (tongue.oblong()) }
                    option value="round" { (tongue.round_tin()) }
                    option value="volume" { (tongue.by_volume()) }
                } }
                span.tin hidden {
                    label data-for="box" { span { (tongue.long_cm()) } input name="long" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="box" { span { (tongue.wide_cm()) } input name="wide" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="round" { span { (tongue.across_cm()) } input name="round" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="box round" { span { (tongue.high_cm()) } input name="high" type="number" min="1" max="200" step="any" inputmode="decimal"; }
                    label data-for="volume" { span { (tongue.holds_ml()) } input name="holds" type="number" min="10" max="100000" step="any" inputmode="decimal"; }
                    label data-for="box round volume" { span { (tongue.how_many_tins()) } input name="tins" type="number" min="1" max="1000" step="1" inputmode="numeric"; }
                }
            }
        }
    }
}

fn measures(formula: &Formula, settings: &BookSettings) -> Markup {
    let units = Units::for_readers(settings);
    let tongue = units.tongue;
    let has_egg = formula.lines().any(|(_, line)| line.ingredient().is_some_and(|one| one.group == Group::Egg));
    html! {
        fieldset {
            legend { (tongue.measures()) }
            label { span { (tongue.amounts()) } select name="amounts" {
                option value="" { (tongue.grams()) }
                option value="spoons" { (tongue.cups_and_spoons()) }
            } }
            label { span { (tongue.whose_cups()) } select name="spoons" {
                @for system in SpoonSystem::ALL {
                    option value=(system.name()) selected[system == units.household()] {
                        (quantity::print::capital(tongue.spoons(system)))
                    }
                }
            } }
            label { span { (tongue.degrees()) } select name="degrees" {
                @if units.is_american() { option value="" { (tongue.both_degrees()) } option value="c" { "°C" } } @else { option value="" { "°C" } }
                option value="f" { "°F" }
            } }
            @if has_egg {
                label { span { (tongue.my_eggs()) } select name="eggs" {
                    option value="" { (tongue.as_written()) }
                    @for word in EggSize::WORDS { option value=(word) { (egg_title(word, tongue)) } }
                } }
            }
        }
    }
}

/// "US large", "size L".
fn egg_title(word: &str, tongue: Tongue) -> String {
    match word.chars().next() {
        Some(first) if first.is_lowercase() => tongue.american_size(word.replace('-', " ")),
        _ => tongue.size(word),
    }
}

/// Filled by the page from what its flours are.
fn flours(tongue: Tongue) -> Markup {
    html! {
        fieldset #flours hidden {
            legend { (tongue.my_flour()) }
            p.fine { (tongue.protein_of_the_bag()) }
        }
    }
}

fn room(reader: &Reader, tongue: Tongue) -> Markup {
    let (from, to) = (rooms::COLDEST, rooms::WARMEST);
    html! {
        fieldset {
            legend { (tongue.room_and_clock()) }
            @if reader.ferments {
                div.room {
                    label { span { (tongue.my_room()) } input name="room" type="range" min=(from) max=(to) step="0.5"; }
                    output name="shown" {}
                }
                button type="button" name="no-room" hidden { (tongue.as_the_method_says()) }
                @if let Some(learnt) = &reader.learnt { p.fine { (learnt) } }
            }
            label { span { (tongue.served_at()) } input name="serve" type="time"; }
            label { span { (tongue.or_begun_at()) } input name="begin" type="time"; }
        }
    }
}

fn ways(reader: &Reader, tongue: Tongue) -> Markup {
    html! {
        @if !reader.ways.is_empty() {
            fieldset.ways {
                legend { (tongue.what_raises_it()) }
                label { input type="radio" name="way" value="" checked; span { (tongue.as_the_formula_says()) } }
                @for way in &reader.ways { label { input type="radio" name="way" value=(way.key); span { (quantity::print::capital(&way.title)) } } }
                @for way in &reader.ways {
                    div.told data-told=(way.key) hidden {
                        @if !way.minded.is_empty() { p { b { (tongue.to_mind_here()) " " } (way.minded.join("; ")) "." } }
                        @if !way.lost.is_empty() { p { b { (tongue.not_kept()) " " } (way.lost.join("; ")) "." } }
                    }
                }
            }
        }
    }
}
