//! What happens in the book, told to every browser as it happens.

use super::answer::Refusal;
use super::desk::{Desk, Happened, Seated};
use super::door::{Role, Visitor};
use super::present::Seat;
use crate::{looking, terminal};
use axum::Router;
use axum::extract::{Query, State};
use axum::http::HeaderMap;
use axum::response::sse::{Event, KeepAlive, Sse};
use axum::routing::get;
use serde::Deserialize;
use serde_json::json;
use std::convert::Infallible;
use tokio_stream::wrappers::BroadcastStream;
use tokio_stream::{Stream, StreamExt};

pub fn routes() -> Router<Desk> {
    Router::new().route("/live", get(live))
}

/// Which formula somebody has before them.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Before {
    at: String,
}

async fn live(
    State(desk): State<Desk>,
    visitor: Visitor,
    headers: HeaderMap,
    Query(before): Query<Before>,
) -> Result<Sse<impl Stream<Item = Result<Event, Infallible>>>, Refusal> {
    if visitor.role < Role::Helper {
        return Err(Refusal::forbidden("That is not for tasters."));
    }
    let stream = BroadcastStream::new(desk.listen());
    // One who fell behind looks at the whole anew.
    let told = stream
        .map(|happened| happened.unwrap_or(Happened::Changed { file: String::new(), what: String::new(), by: String::new() }));
    let told = told.take_while(|happened| !matches!(happened, Happened::Farewell));
    // Whose key was withdrawn hears no more.
    let doors = desk.clone();
    let told = told.take_while(move |_| doors.doors().are_open_for(&headers));
    let at = if desk.book().book.formulas.contains_key(&before.at) { before.at } else { String::new() };
    let seated = desk.seat(Seat { at, session: visitor.session, name: visitor.name });
    let events = told.map(move |happened| Ok(Event::default().data(in_json(&happened, &seated))));
    Ok(Sse::new(events).keep_alive(KeepAlive::default()))
}

fn in_json(happened: &Happened, seated: &Seated) -> String {
    match happened {
        Happened::Changed { file, what, by } => json!({ "changed": file, "what": what, "by": by }).to_string(),
        Happened::Moved => json!({ "here": seated.others() }).to_string(),
        Happened::Farewell => json!({ "farewell": true }).to_string(),
    }
}

/// Looks on while editors and other programs work on the book's files, and reads it anew when one has changed.
pub fn look_on(desk: &Desk) {
    let desk = desk.clone();
    let looking = move || {
        let nowhere = desk.folder().join(".published");
        let mut seen = looking::at(desk.folder(), &nowhere);
        loop {
            looking::until_changed(desk.folder(), &nowhere, &seen);
            // Looked at before it is read: what changes while it is read is seen the next time.
            seen = looking::at(desk.folder(), &nowhere);
            let before = desk.book();
            match desk.read_again() {
                Err(failure) => terminal::complain(&failure),
                Ok(now) => {
                    let same = |file: &str| {
                        before.text.files.get(file).map(|one| &one.text) == now.text.files.get(file).map(|one| &one.text)
                    };
                    let all = before.text.files.keys().chain(now.text.files.keys());
                    let mut changed: Vec<&String> = all.filter(|file| !same(file)).collect();
                    changed.dedup();
                    for file in changed {
                        let what = "changed by another program".to_owned();
                        desk.tell(Happened::Changed { file: file.clone(), what, by: String::new() });
                    }
                }
            }
        }
    };
    std::thread::spawn(looking);
}
