//! Ballots to print, one a seat, and labels for the cups.

use super::leader::{Setting, between};
use super::told::consent;
use crate::page::alone;
use bench::tasting::{LIKING, Notice, Seat};
use formula::read::{BookSettings, Method, Tasting};
use maud::{Markup, html};
use quantity::print::capital;

const STYLE: &str = include_str!("ballots.css");

/// One page with a ballot for every seat and, after them, the codes to cut out for the cups.
#[must_use]
pub fn ballots(setting: &Setting, notice: &Notice, settings: &BookSettings) -> String {
    let tasting = setting.tasting;
    let consent = consent(tasting, notice);
    let title = format!("{}: ballots", tasting.title);
    let body = html! {
        @for (seat, number) in setting.seats.iter().zip(1_usize..) { (ballot(tasting, seat, number, &consent)) }
        section.labels {
            h1 { "Labels for the cups" }
            p { "Cut out and put one by each cup; the small figure is the seat." }
            ul {
                @for (seat, number) in setting.seats.iter().zip(1_usize..) {
                    @if seat.reference.is_some() { li { "R" small { (number) } } }
                    @for cup in &seat.cups { li { (cup.code) small { (number) } } }
                }
            }
        }
    };
    alone(&title, &settings.language, STYLE, &body)
}

/// What the taster does, in a sentence or two.
#[must_use]
pub const fn how(tasting: &Tasting) -> &'static str {
    match tasting.method {
        Method::Triangle => {
            "Two of the three samples are alike and one is different. Taste from left to right. You must choose one, even by a guess."
        }
        Method::DuoTrio => {
            "Taste the reference R first, then the two samples from left to right. One of them is like the reference: choose it, even by a guess."
        }
        Method::Paired => "Taste the two samples from left to right and choose one, even by a guess.",
        Method::Preference => "Taste the two samples from left to right and choose the one you prefer. You must choose one.",
        Method::Ranking if tasting.ties => {
            "Taste the samples from left to right, then put them in order: 1 for the most. Two may share a rank if you cannot tell them apart."
        }
        Method::Ranking => {
            "Taste the samples from left to right, then put them in order: 1 for the most. Each has a rank of its own."
        }
        Method::Liking => "Taste the samples from left to right and tick for each how much you like it.",
        Method::Description => "Taste the samples from left to right and tick for each where it lies between the two words.",
    }
}

fn ballot(tasting: &Tasting, seat: &Seat, number: usize, consent: &[String]) -> Markup {
    html! {
        article.ballot {
            header { h1 { (tasting.title) } span.seat { "Seat " (number) } }
            div.agree {
                @for words in consent { p { (words) } }
                p { span.box {} "I have read this and agree to taste." }
            }
            p { (how(tasting)) }
            @if let Some(between) = between(tasting) { p { (capital(&between)) "." } }
            p.question { (tasting.question) }
            (answers(tasting, seat))
        }
    }
}

fn answers(tasting: &Tasting, seat: &Seat) -> Markup {
    match tasting.method {
        Method::Ranking => html! {
            ul.cups { @for cup in &seat.cups { li { (cup.code) " " span.line {} } } }
        },
        Method::Liking => scale(seat, "Liking", &LIKING),
        Method::Description => html! {
            @for attribute in &tasting.attributes {
                h2 { (attribute.title) }
                div.ends { span { "1 " (attribute.low) } span { "9 " (attribute.high) } }
                (scale(seat, &attribute.title, &["1", "2", "3", "4", "5", "6", "7", "8", "9"]))
            }
        },
        Method::Triangle | Method::DuoTrio | Method::Paired | Method::Preference => html! {
            ul.cups {
                @if seat.reference.is_some() { li { "R" } }
                @for cup in &seat.cups { li { span.box {} (cup.code) } }
            }
        },
    }
}

fn scale(seat: &Seat, title: &str, words: &[&str; 9]) -> Markup {
    html! {
        table.points {
            thead { tr { th scope="col" { (title) } @for word in words { th scope="col" { (word) } } } }
            tbody { @for cup in &seat.cups { tr { th scope="row" { (cup.code) } @for _ in words { td { span.box {} } } } } }
        }
    }
}
