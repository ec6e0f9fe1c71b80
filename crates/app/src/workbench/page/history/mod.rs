//! What a formula said before: revisions with their notes, strokes, texts that were kept aside; each taken up again as
//! a stroke.

pub mod difference;
mod past;

use super::addresses::{asking, of_formula};
use super::formula::{OnBench, ways};
use super::{Way, may_write, when};
use crate::memory::{aside, document, told};
use crate::revisions::what_changed;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::Change;
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::routing::{get, post};
use jiff::Timestamp;
use maud::{Markup, html};
use past::Past;
use serde::Deserialize;
use store::{Kind, Revision, Saved, Saving, Stroke, hash};

pub const WAY: Way = Way { address: "/history", title: "History", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/formula/{name}/history", get(history))
        .route("/formula/{name}/history/save", post(saved))
        .route("/formula/{name}/history/take", post(taken))
}

/// So many strokes and revisions are told; of older ones only that there are some.
const MOST: usize = 60;

#[derive(Default, Deserialize)]
#[serde(default)]
struct Looked {
    /// Which text of the past is held against what stands: "revision-3", "stroke-17", "aside-2".
    at: String,
    saved: String,
}

/// The formula's name in the memory.
fn remembered(one: &OnBench) -> String {
    document(&one.file).map_or_else(|| one.name().to_owned(), |(_, name)| name)
}

async fn history(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(looked): Query<Looked>) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let title = one.checked().value.head.title;
    let store = desk.store()?;
    let own = remembered(&one);
    let revisions = store.history(Kind::Formula, &own).await.map_err(told)?;
    let strokes = store.strokes(Kind::Formula, &own).await.map_err(told)?;
    let kept = store.strokes(Kind::Formula, &aside(&own)).await.map_err(told)?;
    let held = match Past::named(&looked.at) {
        Some(past) => Some((past, past.text(store, &own).await?)),
        None => None,
    };
    let mut told_of = Vec::new();
    for revision in revisions.iter().rev().take(MOST) {
        let changed =
            if revision.number > 1 { what_changed(store, &opened, &own, revision.number).await? } else { String::new() };
        told_of.push((revision, changed));
    }
    let body = html! {
        main #work.history {
            h1 { (title) }
            (ways(&name, &visitor, WAY.address))
            @if !looked.saved.is_empty() { p role="status" { (looked.saved) } }
            @if let Some((past, text)) = &held { (against(&one, *past, text, &visitor)) }
            (set_aside(&name, &kept))
            (saving(&name, &visitor))
            (of_revisions(&name, &told_of))
            (of_strokes(&name, &strokes))
        }
    };
    page(&Frame::of(&visitor, &title, ""), &body)
}

/// A text of the past against the text that stands, with the button that takes it up.
fn against(one: &OnBench, past: Past, text: &str, visitor: &Visitor) -> Markup {
    let now = &one.source.text;
    html! {
        section #against aria-labelledby="held" {
            h2 #held { (past.in_words()) ", against what stands now" }
            @if text == now { p { "It says the same as what stands now." } } @else {
                form.fields method="post" action=(of_formula(one.name(), "/history/take")) {
                    (token(visitor))
                    input type="hidden" name="from" value=(hash(now));
                    input type="hidden" name="at" value=(past.name());
                    button { "Take it up again" } span.fine { "A stroke that Undo takes back." }
                }
                (difference::markup(now, text))
            }
        }
    }
}

fn link(name: &str, past: Past, words: &str) -> Markup {
    html! { a href={ (asking(&of_formula(name, WAY.address), &[("at", past.name())])) "#against" } { (words) span.apart { ": " (past.in_words()) } } }
}

fn set_aside(name: &str, kept: &[Stroke]) -> Markup {
    let open: Vec<&Stroke> = kept.iter().filter(|one| !one.undone).collect();
    html! {
        @if !open.is_empty() {
            section aria-labelledby="aside" {
                h2 #aside { "Kept aside" }
                p { "Somebody else had changed the formula meanwhile: nothing was overwritten, and what was wanted is kept here." }
                ul.plain.past { @for one in open.iter().rev().take(MOST) { li {
                    (made(one)) " " (link(name, Past::Aside(one.number), "See the difference"))
                } } }
            }
        }
    }
}

fn made(one: &Stroke) -> Markup {
    html! { b { (when(&one.at)) } @if !one.by.is_empty() { ", " (one.by) } ": " (one.what) }
}

fn saving(name: &str, visitor: &Visitor) -> Markup {
    html! {
        section aria-labelledby="save" {
            h2 #save { "Save a revision" }
            form.fields method="post" action=(of_formula(name, "/history/save")) {
                (token(visitor))
                label { "Why it was changed" input type="text" name="note" size="40" placeholder="less salt, as the tasters asked"; }
                button { "Save it" }
            }
        }
    }
}

fn of_revisions(name: &str, all: &[(&Revision, String)]) -> Markup {
    let compare = |number: i64| asking(&of_formula(name, "/compare"), &[("with", format!("revision-{number}"))]);
    html! {
        section aria-labelledby="revisions" {
            h2 #revisions { "Revisions" }
            @if all.is_empty() { p.fine { "None yet: what is saved as a revision stays for ever, with its note." } }
            ol.plain.past {
                @for (one, changed) in all {
                    li {
                        b { (one.number) " · " (when(&one.at)) } @if !one.by.is_empty() { ", " (one.by) }
                        @if !one.note.is_empty() { p { "“" (one.note) "”" } }
                        @if !changed.is_empty() { p.fine { "Changed: " (changed) } }
                        p { (link(name, Past::Revision(one.number), "See the difference")) " · " a href=(compare(one.number)) { "Side by side" span.apart { ": revision " (one.number) } } }
                    }
                }
            }
        }
    }
}

fn of_strokes(name: &str, all: &[Stroke]) -> Markup {
    html! {
        section aria-labelledby="strokes-heading" {
            h2 #strokes-heading { "Strokes" }
            @if all.is_empty() { p.fine { "Nothing was changed on the workbench yet." } }
            ol.plain.past {
                @for one in all.iter().rev().take(MOST) {
                    li { (made(one)) @if one.undone { " (undone)" } " " (link(name, Past::Stroke(one.number), "See the difference")) }
                }
            }
            @if all.len() > MOST { p.fine { (all.len() - MOST) " older ones are remembered too." } }
        }
    }
}

#[derive(Default, Deserialize)]
#[serde(default)]
struct Note {
    note: Option<String>,
}

async fn saved(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(note): Form<Note>) -> Answer {
    may_write(&visitor)?;
    let note = note.note.ok_or_else(|| Refusal::unfit("That is no form of this page.", "load the page again"))?;
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let own = remembered(&one);
    let text = &one.source.text;
    let saving =
        Saving { kind: Kind::Formula, name: &own, text, note: note.trim(), by: &visitor.name, at: Timestamp::now(), from: None };
    let said = match desk.store()?.save(&saving).await.map_err(told)? {
        Saved::New(one) => format!("Saved as revision {}.", one.number),
        Saved::Unchanged(one) => format!("Nothing has changed since revision {}.", one.number),
    };
    see(&asking(&of_formula(&name, WAY.address), &[("saved", said)]))
}

#[derive(Default, Deserialize)]
#[serde(default)]
struct Take {
    at: String,
    from: String,
}

async fn taken(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(take): Form<Take>) -> Answer {
    may_write(&visitor)?;
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let own = remembered(&one);
    let past = Past::named(&take.at).ok_or_else(|| Refusal::no_such("There is no such text."))?;
    let text = past.text(desk.store()?, &own).await?;
    let what = format!("{} taken up again", past.in_words().to_lowercase());
    desk.write(Change { file: &one.file, from: &take.from, text, what: &what, by: &visitor.name }).await?;
    past.settle(desk.store()?, &own).await?;
    see(&of_formula(&name, ""))
}
