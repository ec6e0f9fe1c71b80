//! The kitchens: how warm they are, what they weigh, heat and hold with, each changed in its own file.

use super::addresses::coded;
use super::changes::undoing;
use super::written::{self, Said, Sheet, Target, Written};
use super::{Way, may_write, plain};
use crate::book::Opened;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::{Change, Reach};
use ::formula::read::keys::KITCHEN;
use ::formula::read::{Kitchen, stem};
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::HeaderMap;
use axum::routing::get;
use maud::{Markup, html};
use store::hash;
use toml_edit::{DocumentMut, value};

pub const WAY: Way = Way { address: "/kitchens", title: "Kitchens", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new().route("/kitchens", get(all).post(begun)).route("/kitchens/{name}", get(one).post(changed))
}

/// The file of a kitchen, as the book names it.
fn file_of(opened: &Opened, name: &str) -> Result<String, Refusal> {
    let is_it = |file: &&String| file.starts_with("kitchens/") && file.ends_with(".toml") && stem(file) == name;
    let found = opened.text.files.keys().find(is_it).cloned();
    found.ok_or_else(|| Refusal::no_such(format!("The book has no kitchen called “{name}”.")))
}

async fn all(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    listed(&desk, &visitor, &html! {}, "")
}

/// The page of all of them, with why another was refused, and what it should be called.
fn listed(desk: &Desk, visitor: &Visitor, why: &Markup, typed: &str) -> Answer {
    let opened = desk.book();
    let own = opened.book.kitchen().name;
    let body = html! {
        main #work {
            h1 { "Kitchens" }
            (why)
            ul.index {
                @for (name, kitchen) in &opened.book.kitchens {
                    li {
                        h2 { a href={ "/kitchens/" (coded(name)) } { (kitchen.title) } }
                        p.fine { (at_a_glance(kitchen)) @if *name == own { " · the book's own" } }
                    }
                }
            }
            @if opened.book.kitchens.is_empty() { p { "None is described yet: a room at 22 °C and a scale in whole gram are assumed." } }
            section aria-labelledby="fresh" {
                h2 #fresh { "Another kitchen" }
                form.fields data-written method="post" action="/kitchens" {
                    (token(visitor))
                    label { "What it is called" input type="text" name="title" value=(typed) required placeholder="The summer kitchen"; }
                    button { "Describe it" }
                }
            }
        }
    };
    page(&Frame::of(visitor, "Kitchens", WAY.address), &body)
}

/// What is stated of it, in a line.
fn at_a_glance(kitchen: &Kitchen) -> String {
    let degrees = |what: &str, at: Option<quantity::Temperature>| {
        at.map(|at| format!("{what} {}", quantity::print::celsius(quantity::Between::just(at))))
    };
    let scales: Vec<String> =
        kitchen.scales.iter().map(|scale| format!("{} to {}", scale.title, quantity::print::mass(scale.shows))).collect();
    let pans: Vec<&str> = kitchen.pans.iter().map(|pan| pan.title.as_str()).collect();
    let told = [degrees("room", kitchen.room), degrees("fridge", kitchen.fridge), Some(scales.join(", ")), Some(pans.join(", "))];
    told.into_iter().flatten().filter(|words| !words.is_empty()).collect::<Vec<_>>().join(" · ")
}

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(asked): Query<Written>) -> Answer {
    let file = file_of(&desk.book(), &name)?;
    let reach = desk.reach(&file).await;
    let just = written::written(&asked, &reach);
    shown(&desk, &visitor, &name, (&reach, &just, &Said::new()))
}

/// The page of one, with what was just written or refused, and what is typed already.
fn shown(desk: &Desk, visitor: &Visitor, name: &str, (reach, said, typed): (&Reach, &Markup, &Said)) -> Answer {
    let opened = desk.book();
    let file = file_of(&opened, name)?;
    let (text, document) = written::document(&opened, &file)?;
    let title = opened.book.kitchens.get(name).map_or_else(|| name.to_owned(), |kitchen| kitchen.title.clone());
    let address = format!("/kitchens/{}", coded(name));
    let body = html! {
        main #work {
            h1 { (title) }
            (said)
            p.fine { "In " (file) ". " span.on-screen { "What you leave as it is stays as it is, comments too. " a href="/kitchens" { "All kitchens" } " · " a href={ "/trials/learnt?kitchen=" (coded(name)) } { "What its trials taught" } } }
            (undoing(&file, &address, reach, visitor))
            form.keys-form data-written method="post" action=(address) {
                (token(visitor))
                input type="hidden" name="from" value=(hash(&text));
                (Sheet::of(&opened, typed).fields(&KITCHEN, document.as_table(), ""))
                (written::writing())
            }
        }
    };
    page(&Frame::of(visitor, &title, WAY.address), &body)
}

async fn changed(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    headers: HeaderMap,
    Form(said): Form<Said>,
) -> Answer {
    may_write(&visitor)?;
    let file = file_of(&desk.book(), &name)?;
    let (_, document) = written::document(&desk.book(), &file)?;
    let target = Target { file: &file, keys: &KITCHEN, table: "" };
    match target.write((&desk, &visitor), document, &said, "kitchen changed").await {
        Ok(()) => see(&format!("/kitchens/{}?written=yes", coded(&name))),
        Err(refusal) => {
            let reach = desk.reach(&file).await;
            refusal.again(&headers, |why| shown(&desk, &visitor, &name, (&reach, why, &said)))
        }
    }
}

async fn begun(State(desk): State<Desk>, visitor: Visitor, headers: HeaderMap, Form(said): Form<Said>) -> Answer {
    may_write(&visitor)?;
    let title = said.get("title").map(|title| title.trim()).unwrap_or_default();
    match begin(&desk, &visitor, title).await {
        Ok(name) => see(&format!("/kitchens/{}", coded(&name))),
        Err(refusal) => refusal.again(&headers, |why| listed(&desk, &visitor, why, title)),
    }
}

/// Writes the file of a new one; gives its name.
async fn begin(desk: &Desk, visitor: &Visitor, title: &str) -> Result<String, Refusal> {
    let name = plain(title);
    if name.is_empty() {
        return Err(Refusal::unfit("A kitchen needs a name.", "such as “The summer kitchen”").of("title"));
    }
    if desk.book().book.kitchens.contains_key(&name) {
        let message = format!("The book has a kitchen called “{name}” already.");
        return Err(Refusal::unfit(message, "give the new one another name").of("title"));
    }
    let mut document = DocumentMut::new();
    document["title"] = value(title);
    let file = format!("kitchens/{name}.toml");
    let change = Change { file: &file, from: &hash(""), text: document.to_string(), what: "begun", by: &visitor.name };
    desk.write(change).await?;
    Ok(name)
}
