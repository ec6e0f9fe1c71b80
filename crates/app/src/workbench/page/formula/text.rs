//! The document's own text, with the same remarks, for those who prefer it.

use super::kitchen::Wanted;
use super::remarks::remark;
use super::{OnBench, may_write};
use crate::workbench::answer::{Answer, page, parts, see, wants_parts};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::Change;
use crate::workbench::page::addresses::of_formula;
use crate::workbench::page::changes::undoing;
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::HeaderMap;
use axum::routing::{get, post};
use formula::Diagnostic;
use formula::source::{Source, line_and_column};
use maud::{Markup, html};
use serde::Deserialize;
use store::hash;

pub fn routes() -> Router<Desk> {
    Router::new().route("/formula/{name}/text", get(text_page).post(written)).route("/formula/{name}/text/try", post(tried))
}

#[derive(Deserialize)]
struct Written {
    text: String,
    #[serde(default)]
    from: String,
}

async fn text_page(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(wanted): Query<Wanted>) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let checked = one.checked();
    let kitchen = wanted.kitchen(&opened)?;
    let title = checked.value.head.title.clone();
    let found = opened.proof_read(checked, &kitchen);
    let body = html! {
        main #work.text data-file=(one.file) {
            h1 { (title) }
            (super::ways(&name, &visitor, "/text"))
            form method="post" data-text {
                (token(&visitor))
                input type="hidden" name="from" value=(hash(&one.source.text));
                label for="text" { "The text of " (one.file) }
                textarea #text name="text" rows="30" spellcheck="false" wrap="off" { "\n" (one.source.text) }
                pre.on-paper aria-hidden="true" { (one.source.text) }
                p { button { "Save" } " " span.fine #saved {} }
            }
            (strokes(&desk, &name, &one.file, &visitor).await)
            (remarks(&found, &one.source.text))
        }
    };
    page(&Frame::of(&visitor, &title, ""), &body)
}

async fn strokes(desk: &Desk, name: &str, file: &str, visitor: &Visitor) -> Markup {
    html! { div #strokes { (undoing(file, &of_formula(name, "/text"), &desk.reach(file).await, visitor)) } }
}

fn remarks(found: &[Diagnostic], text: &str) -> Markup {
    html! {
        section #remarks aria-label="Remarks" {
            @if found.is_empty() { p.fine { "Proof-read: nothing amiss." } }
            @for one in found {
                @let line = line_and_column(text, one.place.span.start).0;
                (remark(one, Some(html! { a href={ "#line-" (line) } data-line=(line) { "line " (line) } })))
            }
        }
    }
}

async fn tried(
    State(desk): State<Desk>,
    _visitor: Visitor,
    Path(name): Path<String>,
    Query(wanted): Query<Wanted>,
    Form(written): Form<Written>,
) -> Answer {
    let opened = desk.book();
    let made = tokio::task::block_in_place(|| {
        let one = OnBench::of(&opened, &name)?;
        let source = Source { file: one.source.file.clone(), text: lines_ended(&written.text) };
        let kitchen = wanted.kitchen(&opened)?;
        let found = opened.proof_read(opened.book.revised(&source), &kitchen);
        Ok::<_, crate::workbench::answer::Refusal>(remarks(&found, &source.text))
    });
    parts(&made?)
}

async fn written(
    State(desk): State<Desk>,
    visitor: Visitor,
    headers: HeaderMap,
    Path(name): Path<String>,
    Form(written): Form<Written>,
) -> Answer {
    may_write(&visitor)?;
    let file = OnBench::of(&desk.book(), &name)?.file;
    let text = lines_ended(&written.text);
    desk.write(Change { file: &file, from: &written.from, text: text.clone(), what: "text changed", by: &visitor.name }).await?;
    if wants_parts(&headers) {
        let strokes = strokes(&desk, &name, &file, &visitor).await;
        return parts(&html! { span.fine #saved data-from=(hash(&text)) { "saved" } (strokes) });
    }
    see(&format!("/formula/{name}/text"))
}

/// A text as files have it: browsers send other line ends.
fn lines_ended(text: &str) -> String {
    let text = text.replace("\r\n", "\n");
    if text.is_empty() || text.ends_with('\n') { text } else { format!("{text}\n") }
}
