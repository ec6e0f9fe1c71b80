//! What holds for the whole book, each written in its own file: its settings, what things cost, and what is there already.

use super::changes::undoing;
use super::{may_write, written};
use crate::book::Opened;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::Change;
use crate::workbench::proof::refuse_faulty;
use ::formula::read::keys::{BOOK, LARDER, PRICES, Table};
use axum::Router;
use axum::extract::{Form, Path, State};
use axum::routing::get;
use maud::{Markup, html};
use std::collections::BTreeMap;
use store::hash;
use toml_edit::DocumentMut;

pub fn routes() -> Router<Desk> {
    Router::new().route("/settings/{what}", get(one).post(changed))
}

/// A file that holds for the whole book.
struct House {
    /// The last part of its page's address, and its file's name.
    what: &'static str,
    title: &'static str,
    /// What it is for.
    about: &'static str,
    keys: &'static Table,
}

const ALL: [House; 3] = [
    House { what: "book", title: "The book’s settings", about: "What holds for every formula and every page.", keys: &BOOK },
    House {
        what: "prices",
        title: "Prices",
        about: "What packs, heat and hands cost. A new price stands beside the old ones, and the latest counts.",
        keys: &PRICES,
    },
    House { what: "larder", title: "The larder", about: "What is there already: the shopping list takes it off.", keys: &LARDER },
];

impl House {
    fn of(what: &str) -> Result<&'static Self, Refusal> {
        ALL.iter().find(|one| one.what == what).ok_or_else(|| Refusal::no_such("There are no such settings."))
    }

    fn file(&self) -> String {
        format!("{}.toml", self.what)
    }

    fn address(&self) -> String {
        format!("/settings/{}", self.what)
    }

    /// What its file says, empty where there is none, and the same as a document.
    fn document(&self, opened: &Opened) -> Result<(String, DocumentMut), Refusal> {
        let file = self.file();
        let text = opened.text.files.get(&file).map(|source| source.text.clone()).unwrap_or_default();
        let broken =
            |_| Refusal::unfit(format!("{file} cannot be read."), "mend it in an editor: `wellproved check` says what is wrong");
        let document = text.parse().map_err(broken)?;
        Ok((text, document))
    }
}

/// The ways to these pages; `here` is the one that is open.
pub fn ways(here: &str) -> Markup {
    html! {
        nav.ways aria-label="Of the whole book" {
            @for one in &ALL { a href=(one.address()) aria-current=[(one.what == here).then_some("page")] { (one.title) } }
        }
    }
}

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(what): Path<String>) -> Answer {
    let house = House::of(&what)?;
    let opened = desk.book();
    let (text, document) = house.document(&opened)?;
    let reach = desk.reach(&house.file()).await;
    let body = html! {
        main #work {
            h1 { (house.title) }
            (ways(house.what))
            p { (house.about) }
            p.fine { "In " (house.file()) @if text.is_empty() { ", which is begun with what you write" } ". What you leave as it is stays as it is, comments too." }
            (undoing(&house.file(), &house.address(), &reach, &visitor))
            form.keys-form method="post" action=(house.address()) {
                (token(&visitor))
                input type="hidden" name="from" value=(hash(&text));
                (written::fields(house.keys, document.as_table(), ""))
                p { button { "Write it" } }
            }
        }
    };
    page(&Frame::of(&visitor, house.title, ""), &body)
}

async fn changed(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(what): Path<String>,
    Form(said): Form<BTreeMap<String, String>>,
) -> Answer {
    may_write(&visitor)?;
    let house = House::of(&what)?;
    let opened = desk.book();
    let (_, mut document) = house.document(&opened)?;
    written::write(house.keys, document.as_table_mut(), "", &said, true);
    let (file, text) = (house.file(), document.to_string());
    refuse_faulty(&opened, &file, &text)?;
    let from = said.get("from").cloned().unwrap_or_default();
    let what = format!("{} changed", house.title.to_lowercase());
    desk.write(Change { file: &file, from: &from, text, what: &what, by: &visitor.name }).await?;
    see(&house.address())
}
