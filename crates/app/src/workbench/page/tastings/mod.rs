//! Blind tastings for whoever leads them: laid, counted without results, closed, and what was found.

mod typed;

use super::Way;
use super::addresses::asking;
use crate::book::Opened;
use crate::tasting::evidence::Evidence;
use crate::tasting::reporting::{Reported, beside, raw};
use crate::tasting::{Held, held, in_book, lay, now, raw as table, removed as removed_told};
use crate::workbench::answer::{Answer, Refusal, page, parts, see};
use crate::workbench::asset;
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::{HeaderMap, header};
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{get, post};
use bench::tasting::{advise, items};
use formula::read::Tasting;
use maud::{Markup, PreEscaped, html};
use publish::page::evidence_page;
use publish::tasting::{Setting, advice, ballots, key, method_name};
use qrcode::QrCode;
use qrcode::render::svg;
use std::collections::BTreeMap;
use typed::Said;

pub const WAY: Way = Way { address: "/tastings", title: "Tastings", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/tastings", get(all))
        .route("/tastings/{name}", get(one))
        .route("/tastings/{name}/lay", post(laid))
        .route("/tastings/{name}/count", get(counted))
        .route("/tastings/{name}/close", post(closed))
        .route("/tastings/{name}/key", get(keyed))
        .route("/tastings/{name}/ballots", get(balloted))
        .route("/tastings/{name}/paper", get(typed::paper).post(typed::entered))
        .route("/tastings/{name}/evidence", get(shown))
        .route("/tastings/{name}/raw.csv", get(raw_data))
        .route("/tastings/{name}/forget", post(forgotten))
}

/// Tasters have their own sheet, and nothing here.
fn leads(visitor: &Visitor) -> Result<(), Refusal> {
    if visitor.role >= Role::Helper { Ok(()) } else { Err(Refusal::forbidden("Only whoever leads the tasting sees this.")) }
}

async fn all(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    leads(&visitor)?;
    let opened = desk.book();
    let body = html! {
        main #work {
            h1 { "Tastings" }
            @if opened.book.tastings.is_empty() { p { "There is no tasting yet: a tasting is a file in tastings/." } }
            ul.index {
                @for tasting in opened.book.tastings.values() {
                    li { h2 { a href={ "/tastings/" (tasting.name) } { (tasting.title) } } p { (tasting.question) } }
                }
            }
        }
    };
    page(&Frame::of(&visitor, "Tastings", WAY.address), &body)
}

/// The last sitting of a tasting, if it was ever laid.
async fn sitting(desk: &Desk, name: &str) -> Result<Option<Held>, Refusal> {
    let store = desk.store()?;
    match store.sitting(name).await.map_err(crate::memory::told)? {
        Some(_) => Ok(Some(held(store, name).await?)),
        None => Ok(None),
    }
}

/// The same, or that there is none.
async fn last(desk: &Desk, name: &str) -> Result<Held, Refusal> {
    sitting(desk, name).await?.ok_or_else(|| Refusal::no_such("This tasting was never laid."))
}

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(said): Query<Said>) -> Answer {
    leads(&visitor)?;
    let opened = desk.book();
    let tasting = in_book(&opened, &name).map_err(|failure| Refusal::no_such(failure.to_string()))?;
    let held = sitting(&desk, &name).await?;
    let body = html! {
        main #work {
            h1 { (tasting.title) }
            @if !said.told.is_empty() { p role="status" { b { (said.told) } } }
            p { (capital(method_name(tasting.method))) ": “" (tasting.question) "”" }
            p.fine { (advice(tasting, advise(tasting))) }
            @match &held {
                Some(held) if held.sitting.closed.is_some() => {
                    p { a href={ "/tastings/" (name) "/evidence" } { "What was found" } " · "
                        a href={ "/tastings/" (name) "/raw.csv" } { "Raw data" } " · " a href={ "/tastings/" (name) "/key" } { "The key" } }
                    (removing(&visitor, &name))
                    h2 { "Once more" } (laying(&visitor, tasting))
                }
                Some(held) => {
                    (count(&desk, held).await?)
                    p { a href={ "/tastings/" (name) "/key" } { "The leader’s sheet, with the key" } " · " a href={ "/tastings/" (name) "/ballots" } { "Ballots to print" } " · " a href={ "/tastings/" (name) "/paper" } { "Type paper ballots in" } }
                    form method="post" action={ "/tastings/" (name) "/close" } { (token(&visitor)) button { "Close the tasting" } }
                    p.fine { "Results can be read once it is closed, and no answer is taken any more." }
                    (removing(&visitor, &name))
                    script type="module" src=(asset::address("count.js")) {}
                }
                None => {
                    @if beside(&opened, &name).is_some() {
                        p { "Its raw data lie beside it in the book: " a href={ "/tastings/" (name) "/evidence" } { "What was found" } " · "
                            a href={ "/tastings/" (name) "/raw.csv" } { "Raw data" } }
                    }
                    (laying(&visitor, tasting))
                }
            }
        }
    };
    page(&Frame::of(&visitor, &tasting.title, WAY.address), &body)
}

fn capital(words: &str) -> String {
    quantity::print::capital(words)
}

fn laying(visitor: &Visitor, tasting: &Tasting) -> Markup {
    let seats = tasting.panel.or(advise(tasting).map(|advice| advice.seats));
    html! {
        form method="post" action={ "/tastings/" (tasting.name) "/lay" } {
            (token(visitor))
            label { "Seats " input type="number" name="seats" min="1" max="500" value=[seats]; } " "
            button { "Lay the table" }
        }
        p.fine { "Codes and orders are drawn, and each seat gets a link of its own." }
    }
}

fn removing(visitor: &Visitor, name: &str) -> Markup {
    html! {
        details {
            summary { "A taster wishes the answers removed" }
            form method="post" action={ "/tastings/" (name) "/forget" } {
                (token(visitor))
                label { "Seat " input type="number" name="seat" min="1" max="500" required; } " "
                button { "Remove for good" }
            }
        }
    }
}

pub(super) type Fields = Form<BTreeMap<String, String>>;

async fn laid(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    headers: HeaderMap,
    Form(fields): Fields,
) -> Answer {
    leads(&visitor)?;
    let seats = fields.get("seats").and_then(|seats| seats.parse().ok());
    let laid = lay(desk.store()?, &desk.book(), &name, seats, None)
        .await
        .map_err(|failure| Refusal::conflict(failure.to_string(), ""))?;
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or("localhost");
    let body = html! {
        main #work {
            h1 { (laid.held.tasting.title) ": a link for each seat" }
            p { "Print this page and give each taster one of the cards, or let them point their telephone at it. The links are told this once: only their prints are kept. " a href={ "/tastings/" (name) } { "On to the count" } }
            ul.links {
                @for (word, number) in laid.words.iter().zip(1..) {
                    @let link = format!("http://{host}/taste/{word}");
                    li { b { "Seat " (number) } (drawn(&link)) a href=(link) { (link) } }
                }
            }
        }
    };
    page(&Frame::apart(&visitor, "Links for tasters"), &body)
}

/// An address for a telephone's camera.
fn drawn(address: &str) -> Markup {
    let code = QrCode::new(address.as_bytes());
    let drawn = code.map(|code| code.render::<svg::Color>().min_dimensions(140, 140).build()).unwrap_or_default();
    // The drawing begins with a declaration that belongs to a file of its own.
    let drawn = drawn.split_once("?>").map_or(drawn.as_str(), |(_, rest)| rest).to_owned();
    html! { (PreEscaped(drawn)) }
}

/// How many have answered, without what.
async fn count(desk: &Desk, held: &Held) -> Result<Markup, Refusal> {
    let progress = desk.store()?.progress(held.sitting.number).await.map_err(crate::memory::told)?;
    let asked = held.seats.first().map_or(0, |seat| items(&held.tasting, seat).len() as i64);
    let whole = progress.iter().filter(|one| one.answered >= asked).count();
    let agreed = progress.iter().filter(|one| one.agreed).count();
    let address = format!("/tastings/{}/count", held.tasting.name);
    Ok(html! {
        p #count data-count=(address) role="status" { b { (whole) } " of " (progress.len()) " seats have answered everything; " (agreed) " have begun." }
    })
}

async fn counted(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    parts(&count(&desk, &held).await?)
}

async fn closed(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    desk.store()?.close_sitting(held.sitting.number, now()).await.map_err(crate::memory::told)?;
    see(&format!("/tastings/{name}"))
}

async fn forgotten(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(fields): Fields) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    let number = fields.get("seat").and_then(|seat| seat.parse().ok()).unwrap_or_default();
    let seat = held.seat(number).map_err(|failure| Refusal::unfit(failure.to_string(), ""))?;
    let removed = desk.store()?.forget(seat, now()).await.map_err(crate::memory::told)?;
    see(&asking(&format!("/tastings/{name}"), &[("told", removed_told(removed, number))]))
}

async fn keyed(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    let setting = Setting { tasting: &held.tasting, seats: &held.seats, seed: &held.sitting.seed, links: &[] };
    let body = html! { main #work { h1 { (held.tasting.title) } pre tabindex="0" { (key(&setting, 90)) } p { a href={ "/tastings/" (name) } { "Back" } } } };
    page(&Frame::of(&visitor, "The leader’s sheet", WAY.address), &body)
}

/// A page that stands by itself, with its own style in it.
fn alone(text: String) -> Response {
    let policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; frame-ancestors 'none'";
    // No picture of its own beside the address is asked for.
    let text = text.replacen("<head>", "<head><link rel=\"icon\" href=\"data:,\">", 1);
    ([(header::CONTENT_SECURITY_POLICY, policy)], Html(text)).into_response()
}

async fn balloted(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let (store, opened) = (desk.store()?, desk.book());
    let held = last(&desk, &name).await?;
    let notice = held.notice(store, &opened).await?;
    let setting = Setting { tasting: &held.tasting, seats: &held.seats, seed: &held.sitting.seed, links: &[] };
    Ok(alone(ballots(&setting, &notice, &opened.book.settings)))
}

/// What pages may claim of the book's tastings, with or without its memory.
pub async fn evidence(desk: &Desk, opened: &Opened) -> Result<Evidence, Refusal> {
    match desk.store() {
        Ok(store) => Ok(Evidence::held_by(store, opened).await?),
        Err(_) => Ok(Evidence::unremembered(opened)),
    }
}

/// The last sitting, or the raw data that lie beside a tasting that was never laid here.
async fn reported(desk: &Desk, name: &str) -> Result<Reported, Refusal> {
    let store = desk.store()?;
    let Some(held) = sitting(desk, name).await? else {
        let none = || Refusal::no_such("This tasting was never laid: there is nothing to show yet.");
        return beside(&desk.book(), name).ok_or_else(none)?.map_err(|failure| Refusal::unfit(failure.to_string(), ""));
    };
    let raw = raw(store, &held).await.map_err(|failure| Refusal::conflict(failure.to_string(), ""))?;
    Ok(Reported::of(held.tasting, raw, &desk.book()))
}

async fn shown(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let reported = reported(&desk, &name).await?;
    Ok(alone(evidence_page(&reported.report(), &[], &desk.book().book.settings)))
}

async fn raw_data(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let reported = reported(&desk, &name).await?;
    let kind = [(header::CONTENT_TYPE, "text/csv; charset=utf-8")];
    Ok((kind, table::write(&reported.tasting, &reported.raw)).into_response())
}
