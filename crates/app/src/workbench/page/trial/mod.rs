//! Trials: begun from a formula, and logged at the bench with floury hands.

mod cards;
mod figures;
mod noting;
mod planning;

use super::Way;
use crate::learning::as_baked;
use crate::logbook::{Logbook, Wanted, beginning, remember_begun};
use crate::memory::file_of;
use crate::moment;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::asset::address;
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::Change;
use crate::workbench::page::changes::undoing;
use axum::Router;
use axum::extract::{Form, Path, State};
use axum::routing::{get, post};
use bench::forecast::{Surroundings, foresee};
use formula::read::Trial;
use maud::{Markup, html};
use publish::logged::{Expected, expected};
use serde::Deserialize;
use store::Kind;

pub const WAY: Way = Way { address: "/trials", title: "Trials", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    let here = Router::new().route("/trials", get(all)).route("/trials/begin", post(begun)).route("/trial/{name}", get(one));
    here.merge(noting::routes()).merge(planning::routes())
}

/// Every trial, the latest first, and the formulas to begin one of.
async fn all(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    let opened = desk.book();
    let body = html! {
        main #work {
            h1 { "Trials" }
            form.beginning method="post" action="/trials/begin" {
                (token(&visitor))
                label { "Bake " select name="formula" { @for formula in opened.formulas() { option value=(formula.name) { (formula.head.title) } } } }
                label { "called " input type="text" name="title" maxlength="200" placeholder="what is tried" autocomplete="off"; }
                button { "Begin a trial" }
            }
            p { a href="/trials/plan" { "Plan a trial of several batches" } }
            ul.index {
                @for trial in opened.book.trials.iter().rev() {
                    li {
                        h2 { a href={ "/trial/" (trial.name) } { (title(trial)) } }
                        p.fine { (trial.formula.value) @if let Some(date) = trial.date { ", " (date) } @if let Some(why) = &trial.left_out { ", left out: " (why) } }
                    }
                }
            }
            link rel="stylesheet" href=(address("logging.css"));
            @if opened.book.trials.is_empty() { p { "None is logged yet. What you weigh and see teaches the forecast." } }
        }
    };
    page(&Frame::of(&visitor, "Trials", WAY.address), &body)
}

fn title(trial: &Trial) -> &str {
    if trial.title.is_empty() { &trial.name } else { &trial.title }
}

/// What is said of a trial that is to be begun.
#[derive(Deserialize)]
struct Begun {
    formula: String,
    #[serde(default)]
    title: String,
}

async fn begun(State(desk): State<Desk>, visitor: Visitor, Form(said): Form<Begun>) -> Answer {
    let alone = desk.to_write().await;
    let opened = desk.read_again()?;
    let no_such = || Refusal::no_such(format!("The book has no formula called “{}”.", said.formula));
    let text = opened.book.formulas.get(&said.formula).map(|source| source.text.clone()).ok_or_else(no_such)?;
    let formula = tokio::task::block_in_place(|| opened.book.formula(&said.formula)).ok_or_else(no_such)?.value;
    let date = moment::now(None, &moment::zone(None)?)?.date().to_string();
    let kitchen = opened.book.kitchen();
    // A second and a third of a day are told apart by a number.
    let free = |number: &usize| {
        let name = if *number == 1 { formula.name.clone() } else { format!("{}-{number}", formula.name) };
        (!opened.folder.join(format!("trials/{date}-{name}.toml")).exists()).then_some(name)
    };
    let name = (1..100).find_map(|number| free(&number)).unwrap_or_else(|| formula.name.clone());
    let wanted = Wanted {
        formula: &formula,
        text: &text,
        kitchen: &kitchen.name,
        title: Some(said.title.trim()).filter(|title| !title.is_empty()),
        name: Some(&name),
        date: &date,
    };
    let (trial, text) = beginning(&opened, &wanted)?;
    let file = file_of(Kind::Trial, &trial);
    desk.note_down(&alone, Change { file: &file, from: "", text, what: "begun", by: &visitor.name }).await?;
    if let Ok(store) = desk.store() {
        remember_begun(store, &wanted, &opened.folder.join(&file)).await?;
    }
    see(&format!("/trial/{trial}"))
}

/// Opens a trial's logbook as it lies on the disk.
fn logbook(desk: &Desk, name: &str) -> Result<Logbook, Refusal> {
    let no_such = || Refusal::no_such(format!("The book has no trial called “{name}”."));
    let opened = desk.book();
    let trial = opened.book.trials.iter().find(|trial| trial.name == name).ok_or_else(no_such)?;
    Ok(Logbook::open(&desk.folder().join(&*trial.file))?)
}

/// What is expected of a trial, from the text that was baked.
fn expectations(logbook: &Logbook) -> Result<Expected, Refusal> {
    let (opened, trial) = (&logbook.opened, logbook.trial()?);
    let no_such = || Refusal::no_such(format!("The book has no formula called “{}”.", trial.formula.value));
    let formula = as_baked(opened, trial).ok_or_else(no_such)?;
    let kitchen = opened.book.kitchen_of(trial);
    let around = Surroundings::of(&kitchen).taught(opened.taught(&kitchen));
    Ok(expected(&formula, &foresee(&formula, &around), publish::Units::of(&opened.book.settings)))
}

/// The buttons that undo the last note.
async fn strokes(desk: &Desk, name: &str, visitor: &Visitor) -> Markup {
    let file = file_of(Kind::Trial, name);
    let reach = desk.reach(&file).await;
    html! { div #strokes { (undoing(&file, &format!("/trial/{name}"), &reach, visitor)) } }
}

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    let strokes = strokes(&desk, &name, &visitor).await;
    let logged = tokio::task::block_in_place(|| -> Result<(String, Markup), Refusal> {
        let logbook = logbook(&desk, &name)?;
        let trial = logbook.trial()?;
        let expected = expectations(&logbook)?;
        let body = html! {
            main #work.logging data-trial=(name) {
                h1 { (title(trial)) }
                p.fine { a href={ "/formula/" (trial.formula.value) } { (trial.formula.value) } @if let Some(date) = trial.date { ", " (date) } ". " (expected.kitchen) }
                p #waiting role="status" {}
                (strokes)
                (cards::all(&logbook, &visitor, &expected))
                (cards::words(&logbook, &visitor))
                (figures::noted(&logbook)?)
            }
            link rel="stylesheet" href=(address("logging.css"));
            script type="module" src=(address("logging.js")) {}
        };
        Ok((title(trial).to_owned(), body))
    });
    let (title, body) = logged?;
    page(&Frame::of(&visitor, &title, ""), &body)
}
