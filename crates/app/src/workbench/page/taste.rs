//! A taster's own sheet, behind the link of one seat: what is in it first, then one screen a sample, and nothing else.

use crate::tasting::seat::{AtSeat, Screen, agree, record_answer, seat_by_word};
use crate::tasting::{now, of_sitting, word};
use crate::workbench::answer::{Answer, PARTS, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::frame::Frame;
use axum::Router;
use axum::extract::{Form, Path, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use axum::routing::{get, post};
use bench::tasting::LIKING;
use formula::read::{Method, Tasting};
use maud::{Markup, html};
use publish::tasting::{consent, how, meanwhile};
use quantity::print::capital;
use std::collections::BTreeMap;

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/taste/{word}", get(sheet))
        .route("/taste/{word}/agree", post(agreed))
        .route("/taste/{word}/answer", post(answered))
}

type Fields = Form<BTreeMap<String, String>>;

/// The seat that a link leads to; a wrong link says no more than that.
async fn seat(desk: &Desk, word: &str) -> Result<AtSeat, Refusal> {
    let found = seat_by_word(desk.store()?, word).await?;
    found.ok_or_else(|| Refusal::no_such("This link leads to no seat. Ask whoever leads the tasting."))
}

async fn sheet(State(desk): State<Desk>, Path(word): Path<String>) -> Answer {
    let at = seat(&desk, &word).await?;
    let body = match at.next_screen() {
        Screen::Closed => over(&at, "The tasting is closed. Thank you."),
        Screen::Forgotten => over(&at, "The answers of this seat were removed, as was wished."),
        _ => {
            let (store, opened) = (desk.store()?, desk.book());
            let sitting = store.sitting_of(at.number.0).await.map_err(crate::memory::told)?;
            let sitting = sitting.ok_or_else(|| Refusal::no_such("The tasting is not there any more."))?;
            let notice = of_sitting(store, sitting).await?.notice(store, &opened).await?;
            screens(&at, &word, &consent(&at.tasting, &notice))?
        }
    };
    page(&Frame::taster(&at.tasting.title), &body)
}

async fn agreed(State(desk): State<Desk>, Path(word): Path<String>, headers: HeaderMap) -> Answer {
    let at = seat(&desk, &word).await?;
    agree(desk.store()?, &at, now()).await.map_err(not_taken)?;
    Ok(taken(&headers, &word))
}

async fn answered(State(desk): State<Desk>, Path(word): Path<String>, headers: HeaderMap, Form(fields): Fields) -> Answer {
    let at = seat(&desk, &word).await?;
    let field = |name: &str| fields.get(name).map(String::as_str).unwrap_or_default();
    let ranks: Vec<(&str, &str)> =
        fields.iter().filter_map(|(name, rank)| Some((name.strip_prefix("rank-")?, rank.as_str()))).collect();
    let value = if ranks.is_empty() { field("value").to_owned() } else { in_order(ranks) };
    record_answer(desk.store()?, &at, (field("item"), &value), field("client"), now()).await.map_err(not_taken)?;
    Ok(taken(&headers, &word))
}

/// Ranks cup by cup as an order: "271 543=118".
fn in_order(mut ranks: Vec<(&str, &str)>) -> String {
    ranks.sort_by_key(|(_, rank)| rank.parse::<u32>().unwrap_or(u32::MAX));
    let groups = ranks.chunk_by(|(_, a), (_, b)| a == b);
    groups.map(|group| group.iter().map(|(code, _)| *code).collect::<Vec<_>>().join("=")).collect::<Vec<_>>().join(" ")
}

fn not_taken(failure: crate::failure::Failure) -> Refusal {
    Refusal::unfit(failure.to_string(), "")
}

/// A page's script needs no page; a browser without one is led on.
fn taken(headers: &HeaderMap, word: &str) -> Response {
    if headers.contains_key(PARTS) {
        StatusCode::NO_CONTENT.into_response()
    } else {
        Redirect::to(&format!("/taste/{word}")).into_response()
    }
}

fn over(at: &AtSeat, words: &str) -> Markup {
    html! { main { h1 { (at.tasting.title) } p { (words) } p.fine { "Seat " (at.number.1) } } }
}

/// Every screen; the page's script shows them one by one, without it they stand below each other.
fn screens(at: &AtSeat, word: &str, consent: &[String]) -> Result<Markup, Refusal> {
    let tasting = &at.tasting;
    let all = at.screens();
    let last_cup = all.iter().rposition(|screen| matches!(screen, Screen::Cup { .. }));
    let mut parts = Vec::new();
    if at.seat.reference.is_some() {
        parts.push(html! {
            section data-screen="reference" { h2 { "Reference R" } p.question { "Taste it first." } (next()) }
            @if let Some(pause) = pause(tasting, "reference") { (pause) }
        });
    }
    for (place, screen) in all.iter().enumerate() {
        parts.push(match screen {
            Screen::Cup { cup, items } => {
                let pause = (Some(place) != last_cup).then(|| pause(tasting, &cup.to_string())).flatten();
                html! { (one_cup(at, word, *cup, items)?) @if let Some(pause) = pause { (pause) } }
            }
            Screen::Choose => html! { (choose(at, word)?) (sending(at)) },
            Screen::Order => rank(at, word)?,
            Screen::Consent | Screen::Done | Screen::Closed | Screen::Forgotten => continue,
        });
    }
    Ok(html! {
        main data-seat=(word) {
            h1.title { (tasting.title) }
            p #waiting role="status" aria-live="polite" {}
            p #refused role="alert" {}
            section data-screen="consent" data-done[at.has_agreed] {
                h2 { "Before you taste" }
                @for words in consent { p { (words) } }
                form method="post" action={ "/taste/" (word) "/agree" } { button.go { "I have read this and agree to taste" } }
            }
            @for part in parts { (part) }
            section data-screen="done" {
                h2 { "Thank you" }
                p { "That was everything. You can close the page once nothing waits for the network." }
                p.fine { "If you wish your answers removed, tell whoever leads the tasting: seat " (at.number.1) "." }
            }
            p.fine.foot { "Seat " (at.number.1) span data-place {} }
        }
    })
}

fn next() -> Markup {
    html! { button.go type="button" data-next { "Next" } }
}

/// What is taken between two samples, and how long to wait.
fn pause(tasting: &Tasting, after: &str) -> Option<Markup> {
    let words = meanwhile(tasting)?;
    let seconds = tasting.pause.map_or(0.0, |pause| pause.from.as_seconds());
    Some(html! {
        section data-screen={ "pause-" (after) } data-wait=(format!("{seconds:.0}")) {
            h2 { "A moment" }
            p.question { (capital(&words)) "." }
            p.clock data-clock {}
            (next())
        }
    })
}

/// The fields that every answer carries: what it answers, and the name under which it is sent once.
fn sent(item: &str) -> Result<Markup, Refusal> {
    let client = word()?;
    Ok(html! { input type="hidden" name="item" value=(item); input type="hidden" name="client" value=(client); })
}

fn one_cup(at: &AtSeat, word: &str, cup: usize, items: &[String]) -> Result<Markup, Refusal> {
    let code = at.seat.cups.get(cup).map_or(0, |cup| cup.code);
    let is_done = !items.is_empty() && items.iter().all(|item| at.answers.contains_key(item));
    let mut scales = Vec::new();
    for (scale, item) in items.iter().enumerate() {
        scales.push(scale_of(at, word, scale, item)?);
    }
    Ok(html! {
        section data-screen={ "cup-" (code) } data-done[is_done] {
            h2 { "Sample " b { (code) } }
            @if items.is_empty() { p.question { "Taste it now." } (next()) } @else { p.question { (at.tasting.question) } }
            @for scale in scales { (scale) }
        }
    })
}

fn scale_of(at: &AtSeat, word: &str, scale: usize, item: &str) -> Result<Markup, Refusal> {
    let attribute = at.tasting.attributes.get(scale).filter(|_| at.tasting.method == Method::Description);
    let given = at.answers.get(item).map(String::as_str).unwrap_or_default();
    let pressed = |point: usize| if given == point.to_string() { "true" } else { "false" };
    Ok(html! {
        form method="post" action={ "/taste/" (word) "/answer" } data-answer=(item) {
            (sent(item)?)
            @if let Some(attribute) = attribute {
                fieldset.line {
                    legend { (attribute.title) }
                    div.ends { span { (attribute.low) } span { (attribute.high) } }
                    div.points {
                        @for point in 1..=9_usize { button name="value" value=(point) aria-pressed=(pressed(point)) { (point) } }
                    }
                }
            } @else {
                div.liking {
                    @for (point, words) in LIKING.iter().enumerate().rev() {
                        button name="value" value=(point + 1) aria-pressed=(pressed(point + 1)) { (words) }
                    }
                }
            }
        }
    })
}

fn choose(at: &AtSeat, word: &str) -> Result<Markup, Refusal> {
    let given = at.answers.get("chosen").map(String::as_str).unwrap_or_default();
    Ok(html! {
        section data-screen="choose" data-done[!given.is_empty()] {
            h2 { (at.tasting.question) }
            p { (how(&at.tasting)) }
            form method="post" action={ "/taste/" (word) "/answer" } data-answer="chosen" {
                (sent("chosen")?)
                div.cups {
                    @for cup in &at.seat.cups {
                        button name="value" value=(cup.code) aria-pressed=(if given == cup.code.to_string() { "true" } else { "false" }) { (cup.code) }
                    }
                }
            }
        }
    })
}

/// What was chosen, before it is sent: the page's script leads here. Without scripts a choice is sent at once, and another
/// one takes its place.
fn sending(at: &AtSeat) -> Markup {
    html! {
        section data-screen="sending" data-done[at.answers.contains_key("chosen")] hidden {
            h2 { "You chose " b data-chosen {} }
            p.question { (at.tasting.question) }
            button.go type="button" data-send { "Send" }
            p { button.back type="button" data-back { "Choose another" } }
        }
    }
}

fn rank(at: &AtSeat, word: &str) -> Result<Markup, Refusal> {
    let is_done = at.answers.contains_key("rank");
    Ok(html! {
        section data-screen="rank" data-done[is_done] {
            h2 { (at.tasting.question) }
            p { (how(&at.tasting)) }
            form method="post" action={ "/taste/" (word) "/answer" } data-answer="rank" data-ties[at.tasting.ties] {
                (sent("rank")?)
                @for cup in &at.seat.cups {
                    label.rank {
                        b { (cup.code) }
                        select name={ "rank-" (cup.code) } required {
                            option value="" { "rank" }
                            @for rank in 1..=at.seat.cups.len() { option value=(rank) { (rank) @if rank == 1 { ", the most" } } }
                        }
                    }
                }
                button.go { "That is my order" }
            }
        }
    })
}
