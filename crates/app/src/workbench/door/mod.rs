//! The doors: who may come in and what they may do there.
//!
//! Alone on its machine the workbench has one visitor, its owner. Shared, it lets in whoever shows a key (`keys`),
//! and knows them by a cookie from then on (`session`). `house` turns away what was meant for another address, `pace`
//! whoever asks too much, `policy` tells the browser what a page may do.

mod enter;
mod house;
mod keys;
mod pace;
mod policy;
mod session;
mod token;

use super::answer::Refusal;
use super::desk::Desk;
use super::journal::Entry;
use crate::failure::Failure;
use axum::extract::{FromRequestParts, Request, State};
use axum::http::Method;
use axum::http::request::Parts;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use house::Names;
use pace::Pace;
use serde::{Deserialize, Serialize};
use std::net::SocketAddr;
use std::sync::{Mutex, MutexGuard, PoisonError};

pub use enter::{form, routes};
pub use keys::{Key, Ring, secret};
pub use token::MOST_OF_A_FORM;

/// What somebody may do, from little to everything.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Role {
    /// Only their own tasting sheet.
    Taster,
    /// Everything but publishing, keys and settings.
    Helper,
    /// Everything.
    Owner,
}

impl Role {
    /// Each of them, from little to everything.
    pub const ALL: [Self; 3] = [Self::Taster, Self::Helper, Self::Owner];

    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Taster => "taster",
            Self::Helper => "helper",
            Self::Owner => "owner",
        }
    }

    /// Where somebody of this role begins.
    pub const fn home(self) -> &'static str {
        match self {
            Self::Taster => "/taste/",
            Self::Helper | Self::Owner => "/",
        }
    }
}

/// Who asks.
#[derive(Clone, Debug)]
pub struct Visitor {
    /// What they may do.
    pub role: Role,
    /// How others see them.
    pub name: String,
    /// What their forms must show.
    pub token: String,
    /// Which of all sessions theirs is.
    pub session: String,
}

impl<S: Send + Sync> FromRequestParts<S> for Visitor {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Refusal> {
        parts.extensions.get::<Self>().cloned().ok_or_else(Refusal::unknown)
    }
}

/// Between which addresses a connection is.
#[derive(Clone, Copy, Debug)]
pub struct From {
    /// Who asks.
    pub peer: SocketAddr,
    /// At which of this machine's addresses.
    pub arrived_at: SocketAddr,
}

/// Whom an address lets in, by how it begins; whatever is not among these is for helpers and owners. A page may ask
/// for more, never for less.
const FOR: &[(&str, Option<Role>)] = &[
    ("/asset/", None),
    ("/enter", None),
    ("/leave", Some(Role::Taster)),
    ("/taste/", Some(Role::Taster)),
    ("/people", Some(Role::Owner)),
];

fn needed(path: &str) -> Option<Role> {
    FOR.iter().find(|(begin, _)| path.starts_with(begin)).map_or(Some(Role::Helper), |(_, role)| *role)
}

/// The doors of a workbench.
#[derive(Debug)]
pub struct Doors {
    names: Names,
    keys: Option<Mutex<Ring>>,
    pace: Pace,
    tries: Pace,
}

impl Doors {
    /// Doors that only this machine can reach, or, with keys, the network too.
    pub fn new(keys: Option<Ring>, known_as: Vec<String>) -> Self {
        Self {
            names: Names { known_as },
            keys: keys.map(Mutex::new),
            // A page and all that belongs to it is a dozen requests, a fast hand a dozen a second.
            pace: Pace::new(400.0, 100.0),
            tries: Pace::new(10.0, 0.1),
        }
    }

    /// The keys, where the workbench is shared.
    pub fn keys(&self) -> Option<MutexGuard<'_, Ring>> {
        self.keys.as_ref().map(|ring| ring.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// The keys, or why there are none.
    pub fn shared(&self) -> Result<MutexGuard<'_, Ring>, Refusal> {
        self.keys().ok_or_else(|| Refusal::no_such("This workbench is not shared, so that it needs no keys."))
    }
}

/// Lets in whoever may come in, and sees to it that a page can only do what it is meant to.
pub async fn guard(State(desk): State<Desk>, request: Request, next: Next) -> Response {
    let mut entry = Entry::begin(&request);
    let response = match let_in(&desk, request, &mut entry).await {
        Ok(request) => next.run(request).await,
        Err(refusal) => refusal.into_response(),
    };
    desk.journal().tell(entry, &response);
    policy::with_policy(response)
}

async fn let_in(desk: &Desk, mut request: Request, entry: &mut Entry) -> Result<Request, Refusal> {
    let doors = desk.doors();
    if !doors.names.are_meant_by(&request) {
        return Err(Refusal::forbidden("This address is not the workbench's."));
    }
    if request.extensions().get::<From>().is_some_and(|from| !doors.pace.allows(from.peer.ip())) {
        return Err(Refusal::too_many());
    }
    let visitor = match doors.keys() {
        Some(ring) => session::visitor(&ring, request.headers()),
        None => Some(alone(desk)),
    };
    let needed = needed(request.uri().path());
    let Some(visitor) = visitor else {
        return if needed.is_none() { Ok(request) } else { Err(Refusal::unknown()) };
    };
    entry.is_by(&visitor);
    if needed.is_some_and(|role| visitor.role < role) {
        return Err(Refusal::forbidden(format!("That is not for a {}.", visitor.role.word())));
    }
    if needed.is_some() && !matches!(*request.method(), Method::GET | Method::HEAD) {
        request = token::shown(request, &visitor).await?;
    }
    request.extensions_mut().insert(visitor);
    Ok(request)
}

/// The one visitor of a workbench that nobody else can reach.
fn alone(desk: &Desk) -> Visitor {
    Visitor { role: Role::Owner, name: String::new(), token: desk.token().to_owned(), session: String::new() }
}

/// A key that is good until the workbench closes, as a way in from an address.
pub fn passing_way(doors: &Doors, role: Role) -> Result<String, Failure> {
    let Some(mut ring) = doors.keys() else { return Ok("/".to_owned()) };
    Ok(format!("/enter?key={}", ring.make("", role, true)?))
}
