//! Answers: pages, parts of pages, and what is said where something cannot be done.

use super::door::Visitor;
use super::frame::Frame;
use crate::failure::Failure;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use bench::exchange::Unfit;
use maud::{Markup, html};

/// What a page or a part of one is answered with.
pub type Answer = Result<Response, Refusal>;

/// Why something cannot be done, in words, with what to do.
#[derive(Debug)]
pub struct Refusal {
    status: StatusCode,
    message: String,
    hint: String,
}

/// The header by which a page's own script asks for parts instead of a whole page.
pub const PARTS: &str = "x-parts";

impl Refusal {
    /// There is no such thing.
    pub fn no_such(what: impl Into<String>) -> Self {
        Self { status: StatusCode::NOT_FOUND, message: what.into(), hint: String::new() }
    }

    /// It was asked in a way that cannot be understood or done.
    pub fn unfit(message: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { status: StatusCode::UNPROCESSABLE_ENTITY, message: message.into(), hint: hint.into() }
    }

    /// Somebody else was there first.
    pub fn conflict(message: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { status: StatusCode::CONFLICT, message: message.into(), hint: hint.into() }
    }

    /// Who asks may not.
    pub fn forbidden(message: impl Into<String>) -> Self {
        Self { status: StatusCode::FORBIDDEN, message: message.into(), hint: String::new() }
    }

    /// What it says.
    pub fn words(&self) -> Markup {
        html! { p { (self.message) } @if !self.hint.is_empty() { p.fine { (self.hint) } } }
    }
}

impl From<Failure> for Refusal {
    fn from(failure: Failure) -> Self {
        // The disk or the memory refuses: what was asked may well be right.
        Self { status: StatusCode::SERVICE_UNAVAILABLE, message: failure.to_string(), hint: String::new() }
    }
}

impl From<Unfit> for Refusal {
    fn from(unfit: Unfit) -> Self {
        Self::unfit(unfit.to_string(), unfit.hint())
    }
}

impl From<crate::failure::Stopped> for Refusal {
    fn from(stopped: crate::failure::Stopped) -> Self {
        match stopped {
            crate::failure::Stopped::Failed(failure) => Self::unfit(failure.to_string(), ""),
            crate::failure::Stopped::Faults => Self::unfit("the book has errors", "mend them first: they stand beside the sheet"),
        }
    }
}

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        let words = html! { div #refusal role="alert" { (self.words()) } };
        let page = Frame::alone("That cannot be done")
            .wrap(&html! { main { h1 { "That cannot be done" } (words) p { a href="/" { "Back to the book" } } } });
        (self.status, Html(page)).into_response()
    }
}

/// A page in its frame.
pub fn page(frame: &Frame, body: &Markup) -> Answer {
    Ok(Html(frame.wrap(body)).into_response())
}

/// Parts of a page, each with the name under which it stands there.
pub fn parts(parts: &Markup) -> Answer {
    Ok(([(header::CONTENT_TYPE, "text/html; charset=utf-8")], parts.clone().into_string()).into_response())
}

/// Whether parts are asked for instead of a page.
pub fn wants_parts(headers: &HeaderMap) -> bool {
    headers.contains_key(PARTS)
}

/// Sends a browser without scripts on to a page.
pub fn see(address: &str) -> Answer {
    Ok(Redirect::to(address).into_response())
}

/// There is no page of that address.
pub async fn nothing_there(_visitor: Visitor) -> Refusal {
    Refusal::no_such("There is no page of that address.")
}
