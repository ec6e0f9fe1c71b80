//! A sheet of labels for a browser or the printer, black on white at the sizes that the law asks for.

use super::words::{self, DRAFT};
use super::{panel, words::date};
use crate::page::alone;
use bench::label::{Label, Run};
use formula::read::BookSettings;
use maud::{Markup, html};

const STYLE: &str = include_str!("label.css");

/// One page with the labels, each begun on a new sheet of paper.
#[must_use]
pub fn html(labels: &[Label], settings: &BookSettings) -> String {
    let title = match labels {
        [one] => format!("{}: draft label", one.name),
        _ => format!("{}: draft labels", settings.title),
    };
    // The label speaks German; what stands beside it for the baker is English.
    let is_german = labels.iter().any(|label| label.is_german);
    let language = if is_german { "en" } else { &settings.language };
    alone(&title, language, STYLE, &html! { @for label in labels { (sheet(label)) } })
}

fn sheet(label: &Label) -> Markup {
    html! {
        article {
            h1 { (label.name) }
            p.draft { (words::heading(label)) ". " b { (DRAFT) } }
            div.columns {
                (box_to_print(label))
                div {
                (chapter("What is missing", &label.gaps))
                (chapter("Still to be decided", &label.open))
                (chapter("What small sellers may be spared; their authority decides", label.law.spared()))
                h2 { "Rules and their dates" }
                ul { @for rule in label.law.rules() { li { (quantity::print::capital(rule.decides)) ": " (rule.name) " (" (rule.date) ")" } } }
                p { (words::letters(label)) }
                }
            }
        }
    }
}

/// The label itself.
fn box_to_print(label: &Label) -> Markup {
    let high = quantity::print::number(label.pack.figures_high, 0);
    html! {
        section.label lang=[label.is_german.then_some("de")] aria-label={ "The label of " (label.name) } {
            p.name { (label.name) }
            p.list { (runs(&words::ingredients(label))) }
            @if let Some(contains) = words::contains(label) { p { b { (contains) } } }
            @if let Some(sums) = words::sums(label) { p { (sums) } }
            @if let Some(declaration) = &label.declaration { (panel::declared(declaration, words::tongue(label))) }
            @if let Some(facts) = &label.facts { (panel::stated(facts)) }
            p class={ "net high" (high) } { (words::net(label)) }
            @if let Some(date) = date(label) { p { (date) } }
            @if let Some(storage) = &label.storage { p { (storage) } }
            @if let Some(by) = &label.sold_by { p { (by) } }
            p.small { (words::tongue(label).label_draft()) }
        }
    }
}

fn runs(runs: &[Run]) -> Markup {
    html! { @for run in runs { @if run.is_strong { b { (run.words) } } @else { (run.words) } } }
}

fn chapter(title: &str, lines: &[impl AsRef<str>]) -> Markup {
    html! {
        @if !lines.is_empty() {
            h2 { (title) }
            ul { @for line in lines { li { (quantity::print::capital(line.as_ref().trim_end_matches('.'))) "." } } }
        }
    }
}
