//! The kitchens: how warm they are, what they weigh, heat and hold with, each changed in its own file.

use super::addresses::coded;
use super::changes::undoing;
use super::{Way, may_write, plain, written};
use crate::book::Opened;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::Change;
use crate::workbench::proof::refuse_faulty;
use ::formula::read::keys::KITCHEN;
use ::formula::read::{Kitchen, stem};
use axum::Router;
use axum::extract::{Form, Path, State};
use axum::routing::get;
use maud::html;
use std::collections::BTreeMap;
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

fn document(opened: &Opened, file: &str) -> Result<(String, DocumentMut), Refusal> {
    let text = opened.text.files.get(file).map(|source| source.text.clone()).unwrap_or_default();
    let broken =
        |_| Refusal::unfit(format!("{file} cannot be read."), "mend it in an editor: `wellproved check` says what is wrong");
    let document = text.parse().map_err(broken)?;
    Ok((text, document))
}

async fn all(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    let opened = desk.book();
    let own = opened.book.kitchen().name;
    let body = html! {
        main #work {
            h1 { "Kitchens" }
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
                form.fields method="post" action="/kitchens" {
                    (token(&visitor))
                    label { "What it is called" input type="text" name="title" required placeholder="The summer kitchen"; }
                    button { "Describe it" }
                }
            }
        }
    };
    page(&Frame::of(&visitor, "Kitchens", WAY.address), &body)
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

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    let opened = desk.book();
    let file = file_of(&opened, &name)?;
    let (text, document) = document(&opened, &file)?;
    let title = opened.book.kitchens.get(&name).map_or_else(|| name.clone(), |kitchen| kitchen.title.clone());
    let reach = desk.reach(&file).await;
    let body = html! {
        main #work {
            h1 { (title) }
            p.fine { "In " (file) ". What you leave as it is stays as it is, comments too. " a href="/kitchens" { "All kitchens" } " · " a href={ "/trials/learnt?kitchen=" (coded(&name)) } { "What its trials taught" } }
            (undoing(&file, &format!("/kitchens/{}", coded(&name)), &reach, &visitor))
            form.keys-form method="post" action={ "/kitchens/" (coded(&name)) } {
                (token(&visitor))
                input type="hidden" name="from" value=(hash(&text));
                (written::fields(&KITCHEN, document.as_table(), ""))
                p { button { "Write it" } }
            }
        }
    };
    page(&Frame::of(&visitor, &title, WAY.address), &body)
}

async fn changed(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    Form(said): Form<BTreeMap<String, String>>,
) -> Answer {
    may_write(&visitor)?;
    let opened = desk.book();
    let file = file_of(&opened, &name)?;
    let (_, mut document) = document(&opened, &file)?;
    written::write(&KITCHEN, document.as_table_mut(), "", &said, true);
    let text = document.to_string();
    refuse_faulty(&opened, &file, &text)?;
    let from = said.get("from").cloned().unwrap_or_default();
    desk.write(Change { file: &file, from: &from, text, what: "kitchen changed", by: &visitor.name }).await?;
    see(&format!("/kitchens/{}", coded(&name)))
}

async fn begun(State(desk): State<Desk>, visitor: Visitor, Form(said): Form<BTreeMap<String, String>>) -> Answer {
    may_write(&visitor)?;
    let title = said.get("title").map(|title| title.trim()).unwrap_or_default();
    let name = plain(title);
    if name.is_empty() {
        return Err(Refusal::unfit("A kitchen needs a name.", "such as “The summer kitchen”"));
    }
    if desk.book().book.kitchens.contains_key(&name) {
        return Err(Refusal::unfit(format!("The book has a kitchen called “{name}” already."), "give the new one another name"));
    }
    let mut document = DocumentMut::new();
    document["title"] = value(title);
    let file = format!("kitchens/{name}.toml");
    let change = Change { file: &file, from: &hash(""), text: document.to_string(), what: "begun", by: &visitor.name };
    desk.write(change).await?;
    see(&format!("/kitchens/{}", coded(&name)))
}
