//! Blind tastings for whoever leads them: laid, counted without results, closed, and what was found.

mod begun;
mod closing;
mod laying;
mod sheet;
mod typed;

use super::addresses::{asking, coded};
use super::{Way, when};
use crate::book::Opened;
use crate::tasting::evidence::Evidence;
use crate::tasting::progress::progress;
use crate::tasting::reporting::{Reported, beside, counting, last as last_told};
use crate::tasting::{Held, held, in_book, now, raw as table, removed as removed_told};
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::asset;
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::{HeaderMap, header};
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{get, post};
use begun::changing;
use closing::{count, counted};
use laying::{laid, laying};
use maud::{Markup, html};
use publish::page::evidence_page;
use publish::tasting::{Setting, ballots, method_name};
use quantity::print::capital;
use std::collections::BTreeMap;
use typed::Said;

pub const WAY: Way = Way { address: "/tastings", title: "Tastings", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/tastings", get(begun::all).post(begun::begun))
        .route("/tastings/{name}", get(one).post(begun::changed))
        .route("/tastings/{name}/lay", post(laid))
        .route("/tastings/{name}/count", get(counted))
        .route("/tastings/{name}/close", get(closing::asked).post(closing::closed))
        .route("/tastings/{name}/clear", post(closing::cleared))
        .route("/tastings/{name}/key", get(sheet::keyed))
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

async fn one(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    Query(said): Query<Said>,
    headers: HeaderMap,
) -> Answer {
    leads(&visitor)?;
    let opened = desk.book();
    let tasting = in_book(&opened, &name).map_err(|failure| Refusal::no_such(failure.words().0))?;
    let held = sitting(&desk, &name).await?;
    let is_open = held.as_ref().is_some_and(|held| held.sitting.closed.is_none());
    let body = html! {
        main #work {
            h1 { (tasting.title) }
            @if !said.told.is_empty() { p role="status" { b { (said.told) } } }
            p { (capital(method_name(tasting.method))) ": “" (tasting.question) "”" }
            @if let Some(held) = &held { (going(&desk, &visitor, held).await?) }
            @if !is_open {
                @if held.is_none() { (shown_beside(&opened, &name)) }
                (laying(&visitor, tasting, held.is_some(), &headers))
                (changing(&desk, &visitor, &name, held.is_some() || beside(&opened, &name).is_some()).await?)
            }
        }
    };
    page(&Frame::of(&visitor, &tasting.title, WAY.address), &body)
}

/// A table that is laid, or was: how far it has come, and where it leads.
async fn going(desk: &Desk, visitor: &Visitor, held: &Held) -> Result<Markup, Refusal> {
    let name = &held.tasting.name;
    let all = progress(desk.store()?, held).await?;
    Ok(match &held.sitting.closed {
        Some(at) if all.whole > 0 => html! {
            p { "Closed on " (when(at)) ": " (all) "." }
            p { (found(name)) " · " a href={ "/tastings/" (name) "/key" } { "The key" } }
            (removing(visitor, name))
        },
        Some(at) => html! {
            p { "The table was cleared on " (when(at)) ": nobody had answered everything, so it is no evidence." }
            @if reported(desk, name).await.is_ok_and(|reported| reported.findings.whole > 0) { p { "From before: " (found(name)) } }
            @if all.agreed > 0 { (removing(visitor, name)) }
        },
        None => html! {
            (count(held, all))
            p { a href={ "/tastings/" (name) "/key" } { "The leader’s sheet, with the key" } " · " a href={ "/tastings/" (name) "/ballots" } { "Ballots to print" } " · " a href={ "/tastings/" (name) "/paper" } { "Type paper ballots in" } }
            p { a.button href={ "/tastings/" (name) "/close" } { "Close the tasting" } }
            p.fine { "You are asked once more. Results can be read once it is closed, and no answer is taken any more." }
            (removing(visitor, name))
            script type="module" src=(asset::address("count.js")) {}
        },
    })
}

/// Where results are read.
fn found(name: &str) -> Markup {
    html! { a href={ "/tastings/" (name) "/evidence" } { "What was found" } " · " a href={ "/tastings/" (name) "/raw.csv" } { "Raw data" } }
}

fn shown_beside(opened: &Opened, name: &str) -> Markup {
    html! { @if beside(opened, name).is_some() { p { "Its raw data lie beside it in the book: " (found(name)) } } }
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

type Fields = Form<BTreeMap<String, String>>;

async fn forgotten(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(fields): Fields) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    let number = fields.get("seat").and_then(|seat| seat.parse().ok()).unwrap_or_default();
    let seat = held.seat(number).map_err(|failure| Refusal::unfit(failure.to_string(), ""))?;
    let removed = desk.store()?.forget(seat, now()).await.map_err(crate::memory::told)?;
    see(&asking(&format!("/tastings/{}", coded(&name)), &[("told", removed_told(removed, number))]))
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

/// The last sitting that counts, or the raw data that lie beside a tasting of which nobody answered everything here.
async fn reported(desk: &Desk, name: &str) -> Result<Reported, Refusal> {
    let (store, opened) = (desk.store()?, desk.book());
    let held = sitting(desk, name).await?;
    let is_cleared = match &held {
        Some(held) => held.sitting.closed.is_some() && progress(store, held).await?.whole == 0,
        None => true,
    };
    if is_cleared
        && counting(store, name, &opened).await?.is_none()
        && let Some(beside) = beside(&opened, name)
    {
        return beside.map_err(|failure| Refusal::unfit(failure.to_string(), ""));
    }
    let held = held.ok_or_else(|| Refusal::no_such("This tasting was never laid: there is nothing to show yet."))?;
    last_told(store, held, &opened).await.map_err(|failure| Refusal::conflict(failure.words().0, ""))
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
