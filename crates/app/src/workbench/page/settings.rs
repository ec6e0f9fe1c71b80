//! What holds for the whole book, each written in its own file: its settings, what things cost, and what is there already.

use super::changes::undoing;
use super::written::{self, Said, Sheet, Target, Written};
use super::{may_write_file, writes};
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::Reach;
use ::formula::read::keys::{BOOK, LARDER, PRICES, Table};
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::HeaderMap;
use axum::routing::get;
use maud::{Markup, html};
use store::hash;

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
}

/// The ways to these pages; `here` is the one that is open.
pub fn ways(here: &str, visitor: &Visitor) -> Markup {
    html! {
        nav.ways aria-label="Of the whole book" {
            @for one in ALL.iter().filter(|one| writes(visitor, &one.file())) { a href=(one.address()) aria-current=[(one.what == here).then_some("page")] { (one.title) } }
        }
    }
}

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(what): Path<String>, Query(asked): Query<Written>) -> Answer {
    let house = House::of(&what)?;
    let reach = desk.reach(&house.file()).await;
    let just = written::written(&asked, &reach);
    shown(&desk, &visitor, house, (&reach, &just, &Said::new()))
}

/// The page of it, with what was just written or refused, and what is typed already.
fn shown(desk: &Desk, visitor: &Visitor, house: &House, (reach, said, typed): (&Reach, &Markup, &Said)) -> Answer {
    let opened = desk.book();
    let (text, document) = written::document(&opened, &house.file())?;
    let body = html! {
        main #work {
            h1 { (house.title) }
            (ways(house.what, visitor))
            (said)
            p { (house.about) }
            p.fine { "In " (house.file()) @if text.is_empty() { ", which is begun with what you write" } ". " span.on-screen { "What you leave as it is stays as it is, comments too." } }
            (undoing(&house.file(), &house.address(), reach, visitor))
            form.keys-form data-written method="post" action=(house.address()) {
                (token(visitor))
                input type="hidden" name="from" value=(hash(&text));
                (Sheet::of(&opened, typed).fields(house.keys, document.as_table(), ""))
                (written::writing())
            }
            (written::wares(&opened))
        }
    };
    page(&Frame::of(visitor, house.title, ""), &body)
}

async fn changed(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(what): Path<String>,
    headers: HeaderMap,
    Form(said): Form<Said>,
) -> Answer {
    let house = House::of(&what)?;
    let file = house.file();
    may_write_file(&visitor, &file)?;
    let (_, document) = written::document(&desk.book(), &file)?;
    let target = Target { file: &file, keys: house.keys, table: "" };
    match target.write((&desk, &visitor), document, &said, &format!("{} changed", house.title.to_lowercase())).await {
        Ok(()) => see(&format!("{}?written=yes", house.address())),
        Err(refusal) => {
            let reach = desk.reach(&file).await;
            refusal.again(&headers, |why| shown(&desk, &visitor, house, (&reach, why, &said)))
        }
    }
}
