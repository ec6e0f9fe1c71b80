//! Publishing: the book proof-read once more, laid out as pages and looked at; and what else each formula gives.

mod formula;
mod published;

use super::addresses::{asking, of_formula};
use super::tastings::evidence;
use super::{Way, when};
use crate::findings::summary;
use crate::memory::told;
use crate::paper;
use crate::press::{self, With};
use crate::revisions::save_all;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use ::formula::{Diagnostic, Severity};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::HeaderValue;
use axum::routing::get;
use jiff::Timestamp;
use maud::{Markup, html};
use serde::Deserialize;
use std::collections::BTreeMap;
use store::{Edition, Saved};

pub const WAY: Way = Way { address: "/publish", title: "Publish", role: Role::Owner };

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/publish", get(proof).post(printed))
        .route("/publish/{name}/{what}", get(formula::given))
        .route("/published/{*path}", get(published::file))
}

/// What pages may do that bring their own look and script with them: nothing to the workbench.
fn apart() -> HeaderValue {
    HeaderValue::from_static(
        "sandbox allow-scripts allow-modals allow-downloads; default-src 'none'; img-src 'self' data:; style-src 'unsafe-inline'; \
         script-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    )
}

fn may_publish(visitor: &Visitor) -> Result<(), Refusal> {
    if visitor.role >= Role::Owner { Ok(()) } else { Err(Refusal::forbidden("Only the book's owner publishes it.")) }
}

#[derive(Default, Deserialize)]
#[serde(default)]
struct Said {
    told: String,
}

async fn proof(State(desk): State<Desk>, visitor: Visitor, Query(said): Query<Said>) -> Answer {
    may_publish(&visitor)?;
    let opened = desk.book();
    let editions = match desk.store() {
        Ok(store) => store.editions().await.map_err(told)?,
        Err(_) => Vec::new(),
    };
    let evidence = evidence(&desk, &opened).await?;
    let body = tokio::task::block_in_place(|| {
        let cited = opened.each(&opened.names(), |checked| evidence.unfounded(&checked.value).collect::<Vec<_>>());
        let found: Vec<Diagnostic> = opened.check().into_iter().chain(cited.into_iter().flatten()).collect();
        let titles: BTreeMap<String, String> =
            opened.formulas().into_iter().map(|formula| (formula.name.clone(), formula.head.title)).collect();
        html! {
            main #work {
                h1 { "Publish" }
                @if !said.told.is_empty() {
                    p role="status" { b { (said.told) } " " a href="/published/index.html" { "Open the pages" } }
                }
                (proof_read(&opened, &found))
                (button(&desk, &found, &visitor))
                (of_editions(&editions))
                (formula::list(&desk, &titles))
            }
        }
    });
    page(&Frame::of(&visitor, "Publish", WAY.address), &body)
}

/// What proof-reading finds, formula by formula.
fn proof_read(opened: &crate::book::Opened, found: &[Diagnostic]) -> Markup {
    let mut by_file: BTreeMap<&str, Vec<&Diagnostic>> = BTreeMap::new();
    for one in found {
        by_file.entry(&one.place.file).or_default().push(one);
    }
    let leads = |file: &str| {
        let named = opened.book.formulas.iter().find(|(_, source)| *source.file == *file);
        named.map(|(name, _)| of_formula(name, ""))
    };
    html! {
        section aria-labelledby="proof" {
            h2 #proof { "Proof-read" }
            p { (quantity::print::capital(&summary(found, opened.names().len()))) "." }
            @for (file, remarks) in &by_file {
                h3 { @match leads(file) { Some(address) => a href=(address) { (file) }, None => (file) } }
                ul { @for one in remarks { li {
                    b { (quantity::print::capital(one.severity.name())) ": " } (one.message) " " a href={ "/why/" (one.code) } { "why?" span.apart { " " (one.code) } }
                } } }
            }
        }
    }
}

fn button(desk: &Desk, found: &[Diagnostic], visitor: &Visitor) -> Markup {
    let is_sound = found.iter().all(|one| one.severity < Severity::Error);
    let is_there = desk.published().join("index.html").is_file();
    html! {
        section aria-labelledby="press" {
            h2 #press { "To press" }
            p { "Into " code { (desk.published().display()) } ": a self-contained page a formula, and the lists that lead to them. Only what changed is made anew; files of your own there are left alone." }
            @if is_sound {
                form.fields method="post" action=(WAY.address) {
                    (token(visitor))
                    label { "A note for the record" input type="text" name="note" size="30" placeholder="the winter edition"; }
                    button { "Publish the book" }
                }
            } @else { p.refused { "With errors nothing is published: mend them first." } }
            @if is_there { p.way { a href="/published/index.html" { "Open the pages as they are published now" } } }
        }
    }
}

fn of_editions(editions: &[Edition]) -> Markup {
    html! {
        @if !editions.is_empty() {
            section aria-labelledby="editions" {
                h2 #editions { "Editions" }
                ul.past { @for one in editions.iter().rev().take(12) { li {
                    b { (one.number) " · " (when(&one.at)) } @if !one.note.is_empty() { ": “" (one.note) "”" }
                } } }
            }
        }
    }
}

#[derive(Default, Deserialize)]
#[serde(default)]
struct Note {
    note: Option<String>,
}

/// Prints the book, and remembers of which revisions the edition is.
async fn printed(State(desk): State<Desk>, visitor: Visitor, Form(note): Form<Note>) -> Answer {
    may_publish(&visitor)?;
    let note = note.note.ok_or_else(|| Refusal::unfit("That is no form of this page.", "load the page again"))?;
    // Nobody changes the book while it is printed.
    let _alone = desk.to_write().await;
    let opened = desk.read_again()?;
    let out = desk.published().to_owned();
    let evidence = evidence(&desk, &opened).await?;
    let with: &[With] = if paper::is_built().is_ok() { &With::ALL } else { &[] };
    let made = tokio::task::block_in_place(|| {
        press::keep_out_of_the_book(&opened.folder, &out)?;
        press::print(&opened, &evidence, &out, with)
    })?;
    let Some(files) = made.files else {
        return Err(Refusal::unfit("Nothing was published: the book has errors.", "mend them first, then publish again"));
    };
    if let Ok(store) = desk.store() {
        let saved = save_all(store, &opened, note.trim(), &visitor.name).await?;
        let revisions: Vec<store::Revision> = saved
            .into_iter()
            .map(|(.., saved)| match saved {
                Saved::New(one) | Saved::Unchanged(one) => one,
            })
            .collect();
        store.published(&revisions, note.trim(), Timestamp::now()).await.map_err(told)?;
    }
    let left = match files.left.len() {
        0 => String::new(),
        n => format!(" {n} of formulas that are gone were changed by another hand and are left."),
    };
    see(&asking(WAY.address, &[("told", format!("Published: {}.{left}", files.told()))]))
}
