//! What the trials of a kitchen taught: foreseen against seen, how sure the forecast is now, and how each leaven drifts.

use crate::learning::learning;
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::Frame;
use crate::workbench::page::addresses::coded;
use axum::Router;
use axum::extract::{Query, State};
use axum::routing::get;
use formula::read::Kitchen;
use maud::{Markup, html};
use publish::lessons::{self, Report};
use serde::Deserialize;

pub fn routes() -> Router<Desk> {
    Router::new().route("/trials/learnt", get(learnt))
}

#[derive(Default, Deserialize)]
#[serde(default)]
struct Asked {
    kitchen: String,
}

async fn learnt(State(desk): State<Desk>, visitor: Visitor, Query(asked): Query<Asked>) -> Answer {
    let opened = desk.book();
    let book = &opened.book;
    let no_such = || Refusal::no_such(format!("The book has no kitchen called “{}”.", asked.kitchen));
    let kitchen = match asked.kitchen.trim() {
        "" => book.kitchen(),
        name => book.kitchens.get(name).cloned().ok_or_else(no_such)?,
    };
    let told = tokio::task::block_in_place(|| {
        let learning = learning(&opened, &kitchen);
        let title = |name: &str| book.pantry.find(name).map_or(name.to_owned(), |one| one.called.clone());
        let leavens = learning.lessons.calibration.leavens.keys().map(|name| (name.clone(), title(name))).collect();
        let report = Report { lessons: &learning.lessons, trials: &learning.trials, kitchen: &kitchen.title, leavens };
        html! {
            (lessons::html(&report, &|name| format!("/trial/{}", coded(name))))
            @for title in &learning.not_as_baked {
                p.fine { "“" (title) "” is held against the formula as it is now: the text that was baked is not remembered." }
            }
        }
    });
    let body = html! {
        main #work.learnt {
            h1 { "What the trials taught" }
            p.fine {
                (kitchen.title) ". Forecasts, days and pages reckon with it as soon as a figure is noted. "
                a href="/trials" { "All trials" } " · " a href="/trials/compare" { "Trials side by side" }
            }
            (kitchens(book.kitchens.values(), &kitchen))
            (told)
        }
    };
    page(&Frame::of(&visitor, "What the trials taught", super::WAY.address), &body)
}

/// Where the book has several kitchens, one of them is chosen.
fn kitchens<'k>(all: impl Iterator<Item = &'k Kitchen>, chosen: &Kitchen) -> Markup {
    let all: Vec<&Kitchen> = all.collect();
    html! {
        @if all.len() > 1 {
            form.fields method="get" action="/trials/learnt" {
                label { "Kitchen " select name="kitchen" {
                    @for one in all { option value=(one.name) selected[one.name == chosen.name] { (one.title) } }
                } }
                button { "Show it" }
            }
        }
    }
}
