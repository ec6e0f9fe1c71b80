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
use axum::http::request::Parts;
use axum::http::{HeaderMap, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use house::Names;
use pace::Pace;
use serde::{Deserialize, Serialize};
use std::net::{IpAddr, SocketAddr};
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
    /// Everything but publishing, keys, prices, the book's settings and the demo book's coming and going.
    Helper,
    /// Everything.
    Owner,
}

impl Role {
    /// Those that a key may have; a taster has the word in the address of their sheet instead.
    pub const BY_KEY: [Self; 2] = [Self::Helper, Self::Owner];

    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Taster => "taster",
            Self::Helper => "helper",
            Self::Owner => "owner",
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
    ("/favicon.ico", None),
    (ENTER, None),
    (TASTERS, None),
    ("/people", Some(Role::Owner)),
    ("/settings/larder", Some(Role::Helper)),
    ("/settings/", Some(Role::Owner)),
    ("/demo", Some(Role::Owner)),
    ("/published/", Some(Role::Helper)),
    ("/publish", Some(Role::Owner)),
];
/// Where keys are shown.
const ENTER: &str = "/enter";
/// Where tasters' sheets are: the word in the address, which nobody guesses, opens that one sheet and nothing else.
const TASTERS: &str = "/taste/";

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
    /// Where the network finds the workbench.
    pub away: String,
}

impl Doors {
    /// Doors that only this machine can reach, or, with keys, the network too.
    pub fn new(keys: Option<Ring>, known_as: Vec<String>, away: String) -> Self {
        Self {
            names: Names { known_as },
            keys: keys.map(Mutex::new),
            // A page and all that belongs to it is a dozen requests, a fast hand a dozen a second.
            pace: Pace::new(400.0, 100.0),
            tries: Pace::new(10.0, 0.1),
            away,
        }
    }

    /// The keys as they are now, where the workbench is shared.
    pub fn keys(&self) -> Option<MutexGuard<'_, Ring>> {
        let mut ring = self.keys.as_ref()?.lock().unwrap_or_else(PoisonError::into_inner);
        ring.look_again();
        Some(ring)
    }

    /// Whether whoever sent these headers may still be in.
    pub fn are_open_for(&self, headers: &HeaderMap) -> bool {
        self.keys().is_none_or(|ring| session::visitor(&ring, headers).is_some())
    }

    /// The keys, or why there are none.
    pub fn shared(&self) -> Result<MutexGuard<'_, Ring>, Refusal> {
        self.keys().ok_or_else(|| Refusal::no_such("This workbench is not shared, so that it needs no keys."))
    }
}

/// Lets in whoever may come in, and sees to it that a page can only do what it is meant to.
pub async fn guard(State(desk): State<Desk>, request: Request, next: Next) -> Response {
    let mut entry = Entry::begin(&request);
    let guesser = peer(&request).filter(|_| shows_a_word(&request));
    let response = match let_in(&desk, request, &mut entry).await {
        Ok(request) => next.run(request).await,
        Err(refusal) => refusal.into_response(),
    };
    if let Some(guesser) = guesser.filter(|_| matches!(response.status(), StatusCode::UNAUTHORIZED | StatusCode::NOT_FOUND)) {
        desk.doors().tries.allows(guesser);
    }
    desk.journal().tell(entry, &response);
    policy::with_policy(response)
}

async fn let_in(desk: &Desk, mut request: Request, entry: &mut Entry) -> Result<Request, Refusal> {
    let doors = desk.doors();
    if !doors.names.are_meant_by(&request) {
        return Err(Refusal::forbidden("This address is not the workbench's."));
    }
    let asks_too_much = |peer| !doors.pace.allows(peer) || (shows_a_word(&request) && !doors.tries.has_left(peer));
    if peer(&request).is_some_and(asks_too_much) {
        return Err(Refusal::too_many());
    }
    if request.uri().path().starts_with(TASTERS) {
        let taster = Visitor { role: Role::Taster, name: String::new(), token: String::new(), session: String::new() };
        request.extensions_mut().insert(taster);
        return Ok(request);
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

fn peer(request: &Request) -> Option<IpAddr> {
    request.extensions().get::<From>().map(|from| from.peer.ip())
}

/// Whether a word in the request opens something, so that it might be guessed.
fn shows_a_word(request: &Request) -> bool {
    [ENTER, TASTERS].iter().any(|begin| request.uri().path().starts_with(begin))
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
