//! The book: every formula, searched and chosen.

use super::Way;
use crate::workbench::answer::{Answer, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use axum::Router;
use axum::extract::State;
use axum::routing::get;
use maud::html;

pub const WAY: Way = Way { address: "/", title: "The book", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new().route("/", get(book))
}

async fn book(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    let opened = desk.book();
    let formulas = opened.formulas();
    let title = if opened.book.settings.title.is_empty() { "The book" } else { &opened.book.settings.title };
    let body = html! {
        main #work {
            h1 { (title) }
            ul.index {
                @for formula in &formulas {
                    li {
                        h2 { a href={ "/formula/" (formula.name) } { (formula.head.title) } }
                        p { (publish::page::first_sentence(&formula.head.intro)) }
                    }
                }
            }
        }
    };
    page(&Frame::of(&visitor, title, WAY.address), &body)
}
