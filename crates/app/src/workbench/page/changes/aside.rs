//! What was kept aside of every file because somebody else had changed it meanwhile: looked at, taken up, or put away.

use crate::book::Opened;
use crate::memory::{aside, document, file_of, is_aside, told, without_aside};
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use crate::workbench::hand::Change;
use crate::workbench::page::history::difference;
use crate::workbench::page::{may_write_file, when, writes};
use axum::extract::{Form, State};
use maud::{Markup, html};
use serde::Deserialize;
use store::{Stroke, hash};

/// So many are shown with their differences, the latest first; the rest is counted.
const MOST: usize = 20;

/// A text that was kept aside.
pub struct Kept {
    file: String,
    stroke: Stroke,
    text: String,
    now: String,
}

/// Everything that was kept aside, that somebody may write, and that says something else than what stands.
pub async fn all(desk: &Desk, opened: &Opened, visitor: &Visitor) -> Result<(Vec<Kept>, usize), Refusal> {
    let store = desk.store()?;
    let mut strokes = store.all_strokes().await.map_err(told)?;
    strokes.retain(|one| is_aside(&one.name) && !one.undone && writes(visitor, &file(one)));
    strokes.sort_by_key(|one| std::cmp::Reverse(one.at));
    let more = strokes.len().saturating_sub(MOST);
    let mut kept = Vec::new();
    for stroke in strokes.into_iter().take(MOST) {
        let file = file(&stroke);
        let now = opened.text.files.get(&file).map(|source| source.text.clone()).unwrap_or_default();
        let text = store.kept(&stroke.after).await.map_err(told)?.unwrap_or_default();
        if text != now {
            kept.push(Kept { file, stroke, text, now });
        }
    }
    Ok((kept, more))
}

fn file(stroke: &Stroke) -> String {
    file_of(stroke.kind, without_aside(&stroke.name))
}

/// All of it, each with its difference.
pub fn markup((kept, more): &(Vec<Kept>, usize), visitor: &Visitor) -> Markup {
    html! {
        @if !kept.is_empty() {
            section aria-labelledby="aside" {
                h2 #aside { "Kept aside" }
                p { "Somebody else had changed the file meanwhile: nothing was overwritten, and what was wanted is kept here." }
                @for (n, one) in kept.iter().enumerate() {
                    details open[n == 0] {
                        summary { b { (one.file) } ", " (when(&one.stroke.at)) @if !one.stroke.by.is_empty() { ", " (one.stroke.by) } ": " (one.stroke.what) }
                        form.fields method="post" action="/changes/take" {
                            (token(visitor))
                            input type="hidden" name="file" value=(one.file);
                            input type="hidden" name="number" value=(one.stroke.number);
                            input type="hidden" name="from" value=(hash(&one.now));
                            button { "Take it up" span.apart { ": " (one.file) ", " (one.stroke.number) } }
                            button formaction="/changes/leave" { "Leave it" span.apart { ": " (one.file) ", " (one.stroke.number) } }
                            span.fine { "Taken up, it takes the place of what stands now; Undo brings that back." }
                        }
                        (difference::markup(&one.now, &one.text))
                    }
                }
                @if *more > 0 { p.fine { (more) " earlier ones are kept too, and stand here once these are taken up or left." } }
            }
        }
    }
}

/// Which one is meant, and what stood there when it was looked at.
#[derive(Deserialize)]
pub struct Meant {
    file: String,
    number: i64,
    #[serde(default)]
    from: String,
}

async fn stroke(desk: &Desk, meant: &Meant) -> Result<Stroke, Refusal> {
    let none = || Refusal::no_such("Nothing of that file is kept aside under that number.");
    let (kind, name) = document(&meant.file).ok_or_else(none)?;
    let all = desk.store()?.strokes(kind, &aside(&name)).await.map_err(told)?;
    all.into_iter().find(|one| one.number == meant.number && !one.undone).ok_or_else(none)
}

/// Writes what was kept aside over what stands.
pub async fn taken(State(desk): State<Desk>, visitor: Visitor, Form(meant): Form<Meant>) -> Answer {
    may_write_file(&visitor, &meant.file)?;
    let stroke = stroke(&desk, &meant).await?;
    let store = desk.store()?;
    let gone = || Refusal::no_such("The memory has lost that text.");
    let text = store.kept(&stroke.after).await.map_err(told)?.ok_or_else(gone)?;
    let what = format!("what was kept aside, taken up: {}", stroke.what);
    desk.write(Change { file: &meant.file, from: &meant.from, text, what: &what, by: &visitor.name }).await?;
    store.mark(&stroke, true).await.map_err(told)?;
    see(super::HERE)
}

/// Shows it no longer; the memory keeps it.
pub async fn left(State(desk): State<Desk>, visitor: Visitor, Form(meant): Form<Meant>) -> Answer {
    may_write_file(&visitor, &meant.file)?;
    let stroke = stroke(&desk, &meant).await?;
    desk.store()?.mark(&stroke, true).await.map_err(told)?;
    see(super::HERE)
}
