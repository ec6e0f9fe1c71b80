//! Answers: pages, parts of pages, and what is said where something cannot be done.

use super::door::{self, Visitor};
use super::frame::Frame;
use crate::failure::Failure;
use axum::Extension;
use axum::body::Body;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use bench::exchange::Unfit;
use maud::{Markup, PreEscaped, html};
use std::convert::Infallible;
use std::time::Duration;
use tokio::sync::mpsc;
use tokio_stream::wrappers::ReceiverStream;

/// What a page or a part of one is answered with.
pub type Answer = Result<Response, Refusal>;

/// Why something cannot be done, in words, with what to do.
#[derive(Debug)]
pub struct Refusal {
    status: StatusCode,
    message: String,
    hint: String,
    about: Option<Box<About>>,
    /// The whole of it, for the journal: with folders that visitors are not told.
    whole: Option<String>,
}

/// What a refusal leads to.
#[derive(Debug)]
enum About {
    /// The field of the form that was sent.
    Field(String),
    /// Where what was wanted is kept: an address and its words.
    Kept(String, &'static str),
}

/// Why something was refused, as the journal tells it.
#[derive(Clone, Debug)]
pub struct Why(pub String);

/// The header by which a page's own script asks for parts instead of a whole page.
pub const PARTS: &str = "x-parts";

impl Refusal {
    fn with(status: StatusCode, message: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { status, message: message.into(), hint: hint.into(), about: None, whole: None }
    }

    /// There is no such thing.
    pub fn no_such(what: impl Into<String>) -> Self {
        Self::with(StatusCode::NOT_FOUND, what, "")
    }

    /// It was asked in a way that cannot be understood or done.
    pub fn unfit(message: impl Into<String>, hint: impl Into<String>) -> Self {
        Self::with(StatusCode::UNPROCESSABLE_ENTITY, message, hint)
    }

    /// Somebody else was there first.
    pub fn conflict(message: impl Into<String>, hint: impl Into<String>) -> Self {
        Self::with(StatusCode::CONFLICT, message, hint)
    }

    /// Who asks may not.
    pub fn forbidden(message: impl Into<String>) -> Self {
        Self::with(StatusCode::FORBIDDEN, message, "")
    }

    /// Nobody knows who asks.
    pub fn unknown() -> Self {
        Self::with(StatusCode::UNAUTHORIZED, "You come in with a key.", "")
    }

    /// The key that was shown opens nothing.
    pub fn no_key() -> Self {
        Self::with(
            StatusCode::UNAUTHORIZED,
            "That key opens nothing here.",
            "it may have been withdrawn, or was good until the workbench closed",
        )
    }

    /// Somebody asks more than one can.
    pub fn too_many() -> Self {
        Self::with(StatusCode::TOO_MANY_REQUESTS, "That is too much at once.", "wait a moment, then try again")
    }

    /// It is more than is read.
    pub fn too_large() -> Self {
        Self::with(StatusCode::PAYLOAD_TOO_LARGE, "That is more than can be taken in.", "")
    }

    /// It did not come in time.
    pub fn too_slow() -> Self {
        Self::with(StatusCode::REQUEST_TIMEOUT, "That did not come in time.", "try it again")
    }

    /// What was asked is amiss, as the command line says it; a page's fields have names and no dashes.
    pub fn amiss(failure: &Failure) -> Self {
        let (message, hint) = failure.words();
        Self::unfit(quantity::print::capital(&spoken(message)), spoken(hint))
    }

    /// About a field of the form that was sent.
    pub fn of(mut self, field: &str) -> Self {
        self.about = Some(Box::new(About::Field(field.to_owned())));
        self
    }

    /// With the way to where what was wanted is kept.
    pub fn kept_at(mut self, address: String, words: &'static str) -> Self {
        self.about = Some(Box::new(About::Kept(address, words)));
        self
    }

    /// What it says.
    pub fn words(&self) -> Markup {
        html! {
            p { (self.message) }
            @if !self.hint.is_empty() { p.fine { (self.hint) } }
            @if let Some(About::Kept(address, words)) = self.about.as_deref() { p { a href=(address) { (words) } } }
        }
    }

    /// The same where a page shows it.
    pub fn markup(&self) -> Markup {
        let field = match self.about.as_deref() {
            Some(About::Field(field)) => Some(field),
            _ => None,
        };
        html! { div #refusal role="alert" data-field=[field] { (self.words()) } }
    }

    /// Shows the page of the form again, with what was typed and why it was refused; a page's own script, and whoever
    /// may not or comes too late, are told that alone.
    pub fn again(self, headers: &HeaderMap, page: impl FnOnce(&Markup) -> Answer) -> Answer {
        if self.status != StatusCode::UNPROCESSABLE_ENTITY || wants_parts(headers) {
            return Err(self);
        }
        let body = page(&self.markup())?;
        Ok((self.status, Extension(Why(self.message)), body).into_response())
    }
}

impl From<Failure> for Refusal {
    fn from(failure: Failure) -> Self {
        // The disk or the memory refuses: what was asked may well be right.
        let whole = Some(failure.to_string());
        Self { whole, ..Self::with(StatusCode::SERVICE_UNAVAILABLE, failure.abroad(), "") }
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
            crate::failure::Stopped::Failed(failure) => {
                Self { whole: Some(failure.to_string()), ..Self::unfit(failure.abroad(), "") }
            }
            crate::failure::Stopped::Faults => Self::unfit("the book has errors", "mend them first: they stand beside the sheet"),
        }
    }
}

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        let words = self.markup();
        let is_unknown = self.status == StatusCode::UNAUTHORIZED;
        let title = if is_unknown { "The door" } else { "That cannot be done" };
        let onward = if is_unknown {
            door::form()
        } else {
            html! { p { a href="/" { "Back to the book" } } }
        };
        let page = Frame::alone(title).wrap(&html! { main { h1 { (title) } (words) (onward) } });
        let why = Why(self.whole.unwrap_or(self.message));
        (self.status, Extension(why), Html(page)).into_response()
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

/// Stands between parts of an answer, so that a page need not read again what it shows already: white space to any other
/// reader.
pub const PARTED: PreEscaped<&str> = PreEscaped("\u{c}");

/// Until the second turn is begun: the screen shows the first before the cores are taken again.
const BREATH: Duration = Duration::from_millis(16);

/// Parts of a page in two turns: what is there at once, then what takes longer. Nothing more is worked out for a page that
/// no longer listens, as while somebody types on.
pub fn in_two_turns(first: &Markup, second: impl FnOnce() -> Markup + Send + 'static) -> Answer {
    let (told, listens) = mpsc::channel::<Result<String, Infallible>>(2);
    let turn = PARTED.0.repeat(2);
    let _ = told.try_send(Ok(format!("{}{turn}", first.0)));
    tokio::spawn(async move {
        tokio::time::sleep(BREATH).await;
        if !told.is_closed() {
            let made = tokio::task::spawn_blocking(|| second().into_string()).await;
            let _ = told.send(Ok(made.unwrap_or_default())).await;
        }
    });
    let body = Body::from_stream(ReceiverStream::new(listens));
    Ok(([(header::CONTENT_TYPE, "text/html; charset=utf-8")], body).into_response())
}

/// Whether parts are asked for instead of a page.
pub fn wants_parts(headers: &HeaderMap) -> bool {
    headers.contains_key(PARTS)
}

/// Sends a browser without scripts on to a page.
pub fn see(address: &str) -> Answer {
    Ok(Redirect::to(address).into_response())
}

/// A page is asked for in a way in which it does not answer.
pub async fn not_so(_visitor: Visitor) -> Refusal {
    Refusal::with(StatusCode::METHOD_NOT_ALLOWED, "That page is not asked so.", "")
}

/// Something of ours broke.
pub fn broken() -> Refusal {
    let hint = "nothing of the book was lost; look at it anew";
    Refusal::with(StatusCode::INTERNAL_SERVER_ERROR, "Something broke while that was answered.", hint)
}

/// There is no page of that address.
pub async fn nothing_there(_visitor: Visitor) -> Refusal {
    Refusal::no_such("There is no page of that address.")
}

/// Words of the command line as a page says them.
pub fn spoken(words: &str) -> String {
    words.replace("--", "")
}
