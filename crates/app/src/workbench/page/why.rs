//! Why a fault is one: its page, with a bad and a good example.

use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::Frame;
use axum::Router;
use axum::extract::Path;
use axum::routing::get;
use maud::{Markup, html};

pub fn routes() -> Router<Desk> {
    Router::new().route("/why/{code}", get(why))
}

async fn why(visitor: Visitor, Path(code): Path<String>) -> Answer {
    let told = crate::commands::explained(&code).ok_or_else(|| Refusal::no_such("There is no fault or rule of that name."))?;
    let body = html! { main #work.why { (told_in_markup(told)) p { a href="/" { "Back to the book" } } } };
    page(&Frame::of(&visitor, &code, ""), &body)
}

/// A page of ours: a heading, paragraphs, and examples between fences.
fn told_in_markup(text: &str) -> Markup {
    let parts = text.split("```").enumerate();
    html! {
        @for (n, part) in parts {
            @if n % 2 == 1 {
                pre tabindex="0" { (part.split_once('\n').map_or(part, |(_, rest)| rest).trim_end()) }
            } @else {
                @for paragraph in part.split("\n\n").map(str::trim).filter(|paragraph| !paragraph.is_empty()) {
                    @if let Some(heading) = paragraph.strip_prefix("# ") { h1 { (heading.lines().next().unwrap_or_default()) } p { (heading.lines().skip(1).collect::<Vec<_>>().join(" ")) } }
                    @else { p { (paragraph) } }
                }
            }
        }
    }
}
