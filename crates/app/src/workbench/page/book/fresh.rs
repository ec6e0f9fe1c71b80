//! A new formula, begun from a starter or from one that is there.

use super::Listed;
use crate::commands::starters;
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use crate::workbench::hand::Change;
use crate::workbench::page::addresses::of_formula;
use crate::workbench::page::{may_write, plain};
use axum::extract::{Form, State};
use maud::{Markup, html};
use serde::Deserialize;
use store::hash;
use toml_edit::{DocumentMut, value};

/// The form that begins one.
pub fn form(all: &[Listed], visitor: &Visitor) -> Markup {
    html! {
        section.fresh aria-labelledby="fresh" {
            h2 #fresh { "A new formula" }
            form.fields method="post" action="/new" {
                (token(visitor))
                label { "What it is called " input type="text" name="title" required placeholder="Seeded rye buns" autocomplete="off"; }
                label { "Begin with " select name="like" {
                    @for one in starters() { option value={ "starter:" (one.name) } { (one.about) } }
                    @for one in all { option value={ "formula:" (one.card.name) } { "a copy of " (one.card.title) } }
                } }
                button { "Begin" }
            }
        }
    }
}

#[derive(Default, Deserialize)]
#[serde(default)]
pub struct Wish {
    title: String,
    like: String,
}

/// Writes the new formula into the book.
pub async fn begun(State(desk): State<Desk>, visitor: Visitor, Form(wish): Form<Wish>) -> Answer {
    may_write(&visitor)?;
    let opened = desk.book();
    let title = wish.title.trim();
    let name = plain(title);
    if name.is_empty() {
        return Err(Refusal::unfit("A formula needs a name.", "call it as it is called on the table: “Seeded rye buns”"));
    }
    if opened.book.formulas.contains_key(&name) {
        return Err(Refusal::unfit(format!("The book has a formula called “{name}” already."), "give the new one another name"));
    }
    let no_such = || Refusal::no_such("There is nothing of that name to begin with.");
    let like = match wish.like.split_once(':') {
        Some(("formula", like)) => opened.book.formulas.get(like).ok_or_else(no_such)?.text.clone(),
        Some(("starter", like)) => starters().iter().find(|one| one.name == like).ok_or_else(no_such)?.text.to_owned(),
        _ => return Err(no_such()),
    };
    let broken = |_| Refusal::unfit("What it should begin with cannot be read.", "mend that first");
    let mut document: DocumentMut = like.parse().map_err(broken)?;
    document["title"] = value(title);
    // What was tasted was the other one.
    document.remove("evidence");
    let file = format!("formulas/{name}.toml");
    let change = Change { file: &file, from: &hash(""), text: document.to_string(), what: "begun", by: &visitor.name };
    desk.write(change).await?;
    see(&of_formula(&name, ""))
}
