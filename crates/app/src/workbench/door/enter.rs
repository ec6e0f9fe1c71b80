//! The way in with a key, and the way out.

use super::{Visitor, session};
use crate::workbench::answer::{Answer, Refusal};
use crate::workbench::desk::Desk;
use crate::workbench::frame::{Frame, token};
use axum::Router;
use axum::extract::{Extension, Form, Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{get, post};
use maud::{Markup, html};
use serde::Deserialize;

pub fn routes() -> Router<Desk> {
    Router::new().route("/enter", get(door).post(key_typed)).route("/leave", post(leave))
}

#[derive(Default, Deserialize)]
#[serde(default)]
struct Shown {
    key: String,
    to: String,
}

/// The door, or, with a key in the address, the way in: a camera reads no forms.
async fn door(state: State<Desk>, visitor: Option<Extension<Visitor>>, headers: HeaderMap, Query(shown): Query<Shown>) -> Answer {
    match visitor {
        _ if !shown.key.is_empty() => come_in(&state, &headers, &shown),
        Some(Extension(visitor)) => Ok(Html(inside(&visitor)).into_response()),
        None => Ok(Html(Frame::alone("The door").wrap(&html! { main { h1 { "The door" } (form()) } })).into_response()),
    }
}

/// The door from within.
fn inside(visitor: &Visitor) -> String {
    let body = html! {
        main {
            h1 { "The door" }
            p { "You are in, as " (visitor.role.word()) "." }
            p { a href="/" { "To the work" } }
            @if !visitor.session.is_empty() {
                form method="post" action="/leave" { (token(visitor)) button { "Leave" } }
            }
        }
    };
    Frame::apart(visitor, "The door").wrap(&body)
}

async fn key_typed(state: State<Desk>, headers: HeaderMap, Form(shown): Form<Shown>) -> Answer {
    come_in(&state, &headers, &shown)
}

/// Where a key is typed, for those without a camera.
pub fn form() -> Markup {
    html! {
        p { "Whoever opened this workbench has a key for you, or a code for your camera." }
        form method="post" action="/enter" {
            p { label { "Key " input type="password" name="key" autocomplete="current-password" required; } " " button { "Come in" } }
        }
    }
}

fn come_in(desk: &Desk, headers: &HeaderMap, shown: &Shown) -> Answer {
    let ring = desk.doors().shared()?;
    let key = ring.shown(shown.key.trim()).ok_or_else(Refusal::no_key)?;
    let jar = session::begin(&ring, key, headers)?;
    let to = if is_within(&shown.to) { shown.to.as_str() } else { "/" };
    // The page leads on by itself: a cookie this strict does not go along where another site's link led here, and
    // the key leaves the address and the history.
    let body = html! { main { h1 { "Come in" } p { a href=(to) { "To the work" } } } };
    let onward: [(&str, String); 1] = [("refresh", format!("0; url={to}"))];
    Ok((onward, jar, Html(Frame::alone("Come in").wrap(&body))).into_response())
}

/// Whether an address leads nowhere else than within this house.
fn is_within(to: &str) -> bool {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"/-_.~%?=&+".contains(&byte);
    to.starts_with('/') && !to.starts_with("//") && to.bytes().all(plain)
}

async fn leave(State(desk): State<Desk>, _visitor: Visitor, headers: HeaderMap) -> Result<Response, Refusal> {
    let mut ring = desk.doors().shared()?;
    let jar = session::end(&mut ring, &headers)?;
    let body = html! { main { h1 { "You have left" } (form()) } };
    Ok((StatusCode::OK, jar, Html(Frame::alone("The door").wrap(&body))).into_response())
}
