//! Trials: begun from a formula, and logged at the bench with floury hands.

mod begin;
mod beside;
mod cards;
mod figures;
mod learnt;
mod logger;
mod noting;
mod planning;

use super::Way;
use crate::learning::as_baked;
use crate::logbook::Logbook;
use crate::memory::file_of;
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::asset::address;
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use crate::workbench::page::addresses::coded;
use crate::workbench::page::changes::undoing;
use axum::Router;
use axum::extract::{Path, State};
use axum::routing::get;
use bench::forecast::{Surroundings, foresee};
use formula::read::Trial;
use maud::{Markup, html};
use publish::logged::{Expected, expected, planned};
use publish::trial_plan::NOT_BAKED;
use store::Kind;

pub const WAY: Way = Way { address: "/trials", title: "Trials", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    let here = Router::new().route("/trials", get(all)).route("/trial/{name}", get(one));
    here.merge(noting::routes())
        .merge(planning::routes())
        .merge(learnt::routes())
        .merge(beside::routes())
        .merge(logger::routes())
        .merge(begin::routes())
}

/// Every trial, the latest first, and the formulas to begin one of.
async fn all(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    let opened = desk.book();
    let body = html! {
        main #work {
            h1 { "Trials" }
            (begin::form(&desk, &opened, &visitor).await)
            p.given {
                a href="/trials/learnt" { "What the trials taught" }
                a href="/trials/compare" { "Trials side by side" }
                a href="/trials/plan" { "Plan a trial of several batches" }
            }
            ul.index {
                @for trial in in_order(&opened.book.trials) {
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

/// The latest day first; the bowls of a day in the order in which they are baked.
fn in_order(trials: &[Trial]) -> Vec<&Trial> {
    let mut all: Vec<&Trial> = trials.iter().collect();
    all.sort_by(|a, b| (b.date, &a.name).cmp(&(a.date, &b.name)));
    all
}

fn title(trial: &Trial) -> &str {
    if trial.title.is_empty() { &trial.name } else { &trial.title }
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
    let mut expected = expected(&formula, &foresee(&formula, &around), publish::Units::of(&opened.book.settings));
    planned(&mut expected, trial, &formula);
    Ok(expected)
}

/// The waiting steps of a trial, each with what it is called.
fn waiting_steps(logbook: &Logbook) -> Result<Vec<(String, String)>, Refusal> {
    Ok(waiting(&expectations(logbook)?))
}

fn waiting(expected: &Expected) -> Vec<(String, String)> {
    let waits = expected.moments.iter().filter(|one| one.noted.contains(&"lasted"));
    waits.map(|one| (one.name.clone(), format!("{}, {}", one.stage, one.called))).collect()
}

/// The buttons that undo the last note.
async fn strokes(desk: &Desk, name: &str, visitor: &Visitor) -> Markup {
    let file = file_of(Kind::Trial, name);
    let reach = desk.reach(&file).await;
    html! { div #strokes { (undoing(&file, &format!("/trial/{name}"), &reach, visitor)) } }
}

/// Why nothing is learnt from a trial, with the button that counts it.
fn left_out(trial: &Trial, visitor: &Visitor) -> Markup {
    let words = |why: &str| if why == NOT_BAKED { "It was baked: count it" } else { "Count it all the same" };
    html! {
        @if let Some(why) = &trial.left_out {
            form.counting method="post" action={ "/trial/" (coded(&trial.name)) "/note" } {
                (token(visitor))
                p { "Left out: " (why) ". Nothing is learnt from it." }
                input type="hidden" name="count" value="yes";
                button { (words(why)) }
            }
        }
    }
}

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    let strokes = strokes(&desk, &name, &visitor).await;
    let logged = tokio::task::block_in_place(|| -> Result<(String, Markup), Refusal> {
        let logbook = logbook(&desk, &name)?;
        let trial = logbook.trial()?;
        let expected = expectations(&logbook)?;
        let kitchen = logbook.opened.book.kitchen_of(trial).name;
        let body = html! {
            main #work.logging data-trial=(name) {
                h1 { (title(trial)) }
                p.fine { a href={ "/formula/" (trial.formula.value) } { (trial.formula.value) } @if let Some(date) = trial.date { ", " (date) } ". " (expected.kitchen) }
                p.given {
                    a href={ "/trials/learnt?kitchen=" (coded(&kitchen)) "#of-" (name) } { "What the trials taught" }
                    a href={ "/trials/compare?trial=" (coded(&name)) } { "Set beside other trials" }
                }
                p #waiting role="status" {}
                (left_out(trial, &visitor))
                (strokes)
                (cards::all(&logbook, &visitor, &expected))
                (cards::words(&logbook, &visitor))
                (logger::form(&name, &waiting(&expected), &visitor))
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
