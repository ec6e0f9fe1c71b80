//! The leader's sheet as a page: what to prepare, and the key to the codes.

use super::{last, leads};
use crate::workbench::answer::{Answer, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::Frame;
use axum::extract::{Path, State};
use bench::tasting::Seat;
use maud::{Markup, html};
use publish::tasting::{Setting, between, method_name, served};
use quantity::print::capital;

pub async fn keyed(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    let tasting = &held.tasting;
    let setting = Setting { tasting, seats: &held.seats, seed: &held.sitting.seed, links: &[] };
    let body = html! {
        main #work {
            h1 { (tasting.title) ": the leader’s sheet" }
            p { b { "Whoever reads this sheet tastes no more:" } " keep it from tasters and from whoever serves them." }
            p { (capital(method_name(tasting.method))) " at " (held.seats.len()) @if held.seats.len() == 1 { " seat" } @else { " seats" }
                ". Codes and orders are random " span.fine { "(seed " span.seed { (setting.seed) } ")" } "." }
            h2 { "To prepare" }
            ul {
                @for (title, cups) in served(&setting) { li { (cups) " of “" (title) "”" } }
                li { "All alike to the eye: size, dish, warmth, light; serve from left to right." }
                @if let Some(between) = between(tasting) { li { (capital(&between)) "." } }
            }
            h2 { "Seats" }
            (table(&setting))
            p { a href={ "/tastings/" (name) } { "Back" } }
        }
    };
    page(&Frame::of(&visitor, "The leader’s sheet", super::WAY.address), &body)
}

/// The key: a row for each seat, the cups from left to right.
fn table(setting: &Setting) -> Markup {
    let most = setting.seats.iter().map(|seat| seat.cups.len()).max().unwrap_or_default();
    let has_reference = setting.seats.iter().any(|seat| seat.reference.is_some());
    let title = |sample: usize| setting.tasting.samples.get(sample).map_or("", |sample| sample.title.as_str());
    let row = |(seat, number): (&Seat, usize)| {
        html! {
            tr {
                th scope="row" { (number) }
                @if has_reference { td data-reference { (seat.reference.map_or("", title)) } }
                @for cup in &seat.cups { td data-code=(cup.code) { b { (cup.code) } " " (title(cup.sample)) } }
            }
        }
    };
    html! {
        div.scroll tabindex="0" role="region" aria-label="The key to the codes" {
            table.key {
                thead { tr { th scope="col" { "Seat" } @if has_reference { th scope="col" { "R" } } @for cup in 1..=most { th scope="col" { "Cup " (cup) } } } }
                tbody { @for one in setting.seats.iter().zip(1..) { (row(one)) } }
            }
        }
    }
}
