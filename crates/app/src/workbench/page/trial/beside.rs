//! Trials side by side: chosen among all of the book, then what went in, what came out and the photographs.

use super::title;
use crate::abreast::{MOST, beside};
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::asset::address;
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::Frame;
use axum::Router;
use axum::extract::{Query, State};
use axum::routing::get;
use formula::read::Trial;
use maud::{Markup, html};

pub fn routes() -> Router<Desk> {
    Router::new().route("/trials/compare", get(compared))
}

async fn compared(State(desk): State<Desk>, visitor: Visitor, Query(pairs): Query<Vec<(String, String)>>) -> Answer {
    let opened = desk.book();
    let said = |key: &str| pairs.iter().filter(|(name, _)| name == key).map(|(_, value)| value.as_str()).collect::<Vec<_>>();
    let (named, formulas) = (said("trial"), said("formula"));
    let all = &opened.book.trials;
    if let Some(other) = named.iter().find(|name| all.iter().all(|trial| trial.name != **name)) {
        return Err(Refusal::no_such(format!("The book has no trial called “{other}”.")));
    }
    let is_meant = |trial: &&Trial| named.contains(&trial.name.as_str()) || formulas.contains(&trial.formula.value.as_str());
    let mut trials: Vec<&Trial> = all.iter().filter(is_meant).collect();
    trials.sort_by(|a, b| (a.date, &a.file).cmp(&(b.date, &b.file)));
    let told = match trials.len() {
        0 | 1 => html! { p { "Tick two trials or more." } },
        many if many > MOST => {
            html! { p role="alert" { "These are " (many) "; more than " (MOST) " side by side nobody reads." } }
        }
        _ => {
            let made = tokio::task::block_in_place(|| beside(&opened, &trials).map(|beside| (beside.title(), beside.html())));
            let (heading, body) = made.map_err(|failure| Refusal::amiss(&failure))?;
            html! { section aria-label=(heading) { (body) } }
        }
    };
    let body = html! {
        main #work.abreast {
            h1 { "Trials side by side" }
            p.fine { a href="/trials" { "All trials" } " · " a href="/trials/learnt" { "What the trials taught" } }
            (choosing(all, &trials))
            (told)
        }
        link rel="stylesheet" href=(address("logging.css"));
    };
    page(&Frame::of(&visitor, "Trials side by side", super::WAY.address), &body)
}

/// Every trial with a box to tick, and every formula that was tried more than once.
fn choosing(all: &[Trial], chosen: &[&Trial]) -> Markup {
    let mut tried: Vec<&str> = all.iter().map(|trial| trial.formula.value.as_str()).collect();
    tried.sort_unstable();
    let mut often: Vec<&str> = tried.chunk_by(|one, other| one == other).filter(|all| all.len() > 1).map(|all| all[0]).collect();
    often.dedup();
    html! {
        details open[chosen.len() < 2] {
            summary { "Which trials" }
            @if !often.is_empty() {
                p.given { @for name in often { a href={ "/trials/compare?formula=" (name) } { "All of " (name) } } }
            }
            form.beginning method="get" action="/trials/compare" {
                @for trial in all.iter().rev() {
                    label.tick {
                        input type="checkbox" name="trial" value=(trial.name) checked[chosen.iter().any(|one| one.file == trial.file)];
                        span { (title(trial)) span.fine { ", " (trial.formula.value) @if let Some(date) = trial.date { ", " (date) } } }
                    }
                }
                button { "Set them side by side" }
            }
        }
    }
}
