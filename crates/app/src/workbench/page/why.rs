//! Why a fault is one: its page, with a bad and a good example.

use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::Frame;
use crate::workbench::page::addresses::of_formula;
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::routing::get;
use maud::{Markup, html};
use serde::Deserialize;

pub fn routes() -> Router<Desk> {
    Router::new().route("/why/{code}", get(why))
}

/// At which formula somebody asked.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Asked {
    of: String,
}

async fn why(State(desk): State<Desk>, visitor: Visitor, Path(code): Path<String>, Query(asked): Query<Asked>) -> Answer {
    let told = crate::commands::explained(&code).ok_or_else(|| Refusal::no_such("There is no fault or rule of that name."))?;
    let of = desk.book().book.formulas.contains_key(&asked.of).then(|| of_formula(&asked.of, ""));
    let back = html! { p.way { @match of { Some(address) => a href=(address) { "Back to the sheet" }, None => a href="/" { "Back to the book" } } } };
    let body = html! { main #work.why { (told_in_markup(told)) (back) } };
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
                    @let (first, rest) = paragraph.split_once('\n').unwrap_or((paragraph, ""));
                    @if let Some(code) = first.strip_prefix("# ") { h1 { (quantity::print::capital(&code.replace('-', " "))) } }
                    @else if let Some(heading) = first.strip_prefix("## ") { h2 { (heading) } }
                    @else { p { (paragraph) } }
                    @if first.starts_with('#') && !rest.trim().is_empty() { p { (rest) } }
                }
            }
        }
    }
}
