//! What trials taught, as part of a page of the workbench.

use super::Report;
use super::drift::charts;
use super::figures::{figure, label};
use super::sentences::{Asked, counted, errors, is_told, lesson_in_words, pace, questions, remark, slips, taught};
use bench::calibration::{Compared, Seen, What};
use maud::{Markup, html};
use quantity::print;

/// The report; `page_of` gives the address of a trial's own page.
#[must_use]
pub fn html(report: &Report, page_of: &dyn Fn(&str) -> String) -> Markup {
    let told: Vec<(usize, &Seen)> = report.lessons.trials.iter().enumerate().filter(|(_, seen)| is_told(seen)).collect();
    if told.is_empty() {
        return html! { p { "No trial of this kitchen tells anything yet: the forecast is that of the books. What you weigh and see at the bench teaches it." } };
    }
    let link = |trial: usize| report.trials.get(trial).map(|trial| page_of(&trial.name)).unwrap_or_default();
    let asked =
        |one: &Asked, advice: &str| html! { p.remark { (one.words) (advice) " " a href=(link(one.trial)) { "The trial" } } };
    let errors = errors(report);
    html! {
        p { (counted(report)) }
        @for lesson in &report.lessons.lessons { @if let Some(told) = pace(report, lesson) { p { b { (told) } } } }
        @for one in slips(report) { (asked(&one, "; put it right on the trial's page.")) }
        @for one in questions(report) { (asked(&one, " Put it right on the trial's page, or say there why nothing is to be learnt from it.")) }
        h2 { "What is known now" }
        @if report.lessons.lessons.is_empty() { p { "The trials say nothing that the forecast could learn from: no rise was read, no bowl, no middle." } }
        @for lesson in &report.lessons.lessons {
            @let [now, each, grounds] = lesson_in_words(report, lesson);
            h3 { (print::capital(&report.name(&lesson.parameter))) }
            p { (now) }
            details { summary { "Trial by trial" } p { (each) } p.fine { (grounds) } }
        }
        @if !errors.is_empty() {
            h2 { "How far off the forecast is" }
            ul { @for told in &errors { li { (told) } } }
        }
        @for (place, (told, chart)) in charts(report).into_iter().enumerate() {
            @if place == 0 {
                h2 { "From week to week" }
                p.fine { "A dot is what a trial says by itself, its line how far its readings leave that open; the band is what is known now." }
            }
            div.drift tabindex="0" role="region" aria-label=(told) { (chart) }
        }
        h2 { "Foreseen and seen" }
        p.fine { "By the books, as the trials before that one led to expect, and as learnt from all." }
        @for (trial, seen) in told.into_iter().rev() {
            section id=(report.trials.get(trial).map(|trial| format!("of-{}", trial.name)).unwrap_or_default()) aria-label=(report.called(trial)) {
                h3 { a href=(link(trial)) { (print::capital(&report.called(trial))) } (remark(seen)) }
                (figures(seen, &report.called(trial)))
                @for told in taught(report, trial) { p.fine { (told) } }
            }
        }
    }
}

/// A row for each figure: what was seen, and what each forecast said.
fn figures(seen: &Seen, called: &str) -> Markup {
    let told = |what: What, value: Option<f64>| value.map_or_else(|| "–".to_owned(), |value| figure(what, value));
    let row = |one: &Compared| {
        let what = one.seen.what;
        html! {
            tr {
                th scope="row" { (one.seen.title) ", " (label(&one.seen)) }
                td { b { (figure(what, one.seen.seen)) } }
                td { (told(what, one.before)) }
                td { (told(what, one.then)) }
                td { (told(what, one.after)) }
            }
        }
    };
    html! {
        @if !seen.figures.is_empty() {
            div.scroll tabindex="0" role="region" aria-label={ "Figures of " (called) } {
                table.compared {
                    thead { tr { td {} th scope="col" { "seen" } th scope="col" { "by the books" } th scope="col" { "foreseen then" } th scope="col" { "as learnt" } } }
                    tbody { @for one in &seen.figures { (row(one)) } }
                }
            }
        }
    }
}
