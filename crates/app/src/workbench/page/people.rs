//! The people: who may come in from the network, by keys that are made and withdrawn here.

use super::Way;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use crate::workbench::sharing;
use axum::Router;
use axum::extract::{Form, Path, State};
use axum::http::{HeaderMap, header};
use axum::routing::{get, post};
use maud::{Markup, PreEscaped, html};
use serde::Deserialize;

pub const WAY: Way = Way { address: "/people", title: "People", role: Role::Owner };

/// A name has at most so many letters.
const LONGEST: usize = 60;

pub fn routes() -> Router<Desk> {
    Router::new().route("/people", get(people).post(made)).route("/people/{number}/withdraw", post(withdrawn))
}

#[derive(Default, Deserialize)]
#[serde(default)]
struct Wanted {
    name: String,
    role: String,
}

async fn people(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    shown(&desk, &visitor, &html! {})
}

async fn made(State(desk): State<Desk>, visitor: Visitor, headers: HeaderMap, Form(wanted): Form<Wanted>) -> Answer {
    let role = Role::BY_KEY.into_iter().find(|role| role.word() == wanted.role);
    let role = role.ok_or_else(|| Refusal::unfit("A key is for an owner or a helper.", ""))?;
    let name: String = wanted.name.chars().filter(|letter| !letter.is_control()).collect();
    let name = name.trim();
    if name.is_empty() || name.chars().count() > LONGEST {
        return Err(Refusal::unfit(format!("A key says for whom it is, in at most {LONGEST} letters."), ""));
    }
    let key = desk.doors().shared()?.make(name, role, false)?;
    let way = format!("{}/enter?key={key}", own_address(&desk, &headers));
    let new = html! {
        section.key aria-label="The new key" {
            h2 { "A key for " (name) }
            p { "Let " (name) " point a camera at it, or open the address, or type the key. It is shown this once and kept nowhere." }
            div.code role="img" aria-label={ "The address as a code for cameras" } { (PreEscaped(sharing::as_drawing(&way)?)) }
            p { "Address: " code.long { (way) } }
            p { "Key: " code.long { (key) } }
        }
    };
    shown(&desk, &visitor, &new)
}

async fn withdrawn(State(desk): State<Desk>, _visitor: Visitor, Path(number): Path<String>) -> Answer {
    if !desk.doors().shared()?.withdraw(&number)? {
        return Err(Refusal::no_such("There is no such key; it may have been withdrawn already."));
    }
    see(WAY.address)
}

/// The address at which others reach the workbench: the one that this page was asked at, unless that is this machine's
/// for itself, which leads nowhere from elsewhere.
fn own_address(desk: &Desk, headers: &HeaderMap) -> String {
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    let name = host.rsplit_once(':').map_or(host, |(name, _)| name);
    if matches!(name, "localhost" | "127.0.0.1") { desk.doors().away.clone() } else { format!("http://{host}") }
}

fn shown(desk: &Desk, visitor: &Visitor, new: &Markup) -> Answer {
    let keys = desk.doors().keys().map(|ring| ring.lasting().to_vec());
    let body = html! {
        main #work {
            h1 { "People" }
            @match &keys {
                None => {
                    p { "Only this machine can reach the workbench. To let others on your network in, open it with " code { "--share" } "." }
                }
                Some(keys) => {
                    (new)
                    (making(visitor))
                    (list(keys, visitor))
                }
            }
        }
    };
    page(&Frame::of(visitor, "People", WAY.address), &body)
}

fn making(visitor: &Visitor) -> Markup {
    html! {
        form.adding method="post" action=(WAY.address) {
            (token(visitor))
            label { "A key for " input type="text" name="name" maxlength=(LONGEST) required; }
            label { "to come in as "
                select name="role" { @for role in Role::BY_KEY { option selected[role == Role::Helper] { (role.word()) } } }
            }
            button { "Make it" }
        }
        p.fine { "Owners may do everything; helpers everything but publishing, making keys, writing prices and the book’s settings, and laying or taking away the demo book. Tasters need no key: each has the address of their own sheet." }
    }
}

fn list(keys: &[crate::workbench::door::Key], visitor: &Visitor) -> Markup {
    html! {
        @if keys.is_empty() { p { "No keys yet but those that are good until the workbench closes." } }
        @else {
            div.scroll {
                table {
                    caption { "Keys" }
                    thead { tr { th scope="col" { "For" } th scope="col" { "As" } th scope="col" { "Since" } th scope="col" { span.apart { "Withdraw" } } } }
                    tbody {
                        @for key in keys {
                            tr {
                                th scope="row" { (key.name) }
                                td { (key.role.word()) }
                                td { (key.made().strftime("%Y-%m-%d %H:%M UTC").to_string()) }
                                td {
                                    form method="post" action={ "/people/" (key.number()) "/withdraw" } {
                                        (token(visitor))
                                        button aria-label={ "Withdraw the key of " (key.name) } { "Withdraw" }
                                    }
                                }
                            }
                        }
                    }
                }
            }
            p.fine { "Whoever came in by a key that is withdrawn is out at once." }
        }
    }
}
