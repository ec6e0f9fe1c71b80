//! Ballots of paper, typed in by whoever leads the tasting.

use super::{Fields, last, leads};
use crate::tasting::{Held, typed};
use crate::workbench::answer::{Answer, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use crate::workbench::page::addresses::{asking, coded};
use axum::Form;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use formula::read::Method;
use maud::html;
use serde::Deserialize;

/// What became of the last thing that was done.
#[derive(Default, Deserialize)]
#[serde(default)]
pub struct Said {
    pub told: String,
}

pub async fn paper(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(said): Query<Said>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    shown(&visitor, &held, "", &said.told)
}

pub async fn entered(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(fields): Fields) -> Answer {
    leads(&visitor)?;
    let store = desk.store()?;
    let held = last(&desk, &name).await?;
    let text = fields.get("ballots").map(String::as_str).unwrap_or_default();
    let ballots = typed::read(text);
    let kept = match &ballots {
        Ok(ballots) => typed::enter(store, &held, ballots).await.map_err(|failure| failure.to_string()),
        Err(failure) => Err(failure.to_string()),
    };
    match kept {
        Ok(told) => see(&asking(&format!("/tastings/{}/paper", coded(&name)), &[("told", told)])),
        // What was typed stays, and none of it was taken down.
        Err(why) => Ok((StatusCode::UNPROCESSABLE_ENTITY, shown(&visitor, &held, text, &why)?).into_response()),
    }
}

fn shown(visitor: &Visitor, held: &Held, text: &str, told: &str) -> Answer {
    let name = &held.tasting.name;
    let codes: Vec<String> =
        held.seats.first().map(|seat| seat.cups.iter().map(|cup| cup.code.to_string()).collect()).unwrap_or_default();
    let first = |more: usize| codes.get(more).map(String::as_str).unwrap_or_default();
    let example = match held.tasting.method {
        Method::Ranking => format!("1,{}", codes.join(" ")),
        Method::Liking => format!("1,{}=6 {}=8", first(0), first(1)),
        Method::Description => {
            let attribute = held.tasting.attributes.first().map_or("", |one| one.name.value.as_str());
            format!("1,{0}.{attribute}=6 {1}.{attribute}=8", first(0), first(1))
        }
        Method::Triangle | Method::DuoTrio | Method::Paired | Method::Preference => format!("1,{}", first(0)),
    };
    let body = html! {
        main #work {
            h1 { (held.tasting.title) ": paper ballots" }
            p { "Type what stands on each ballot whose taster has ticked to agree, a line each: the number of the seat, a comma, and "
                (match held.tasting.method {
                    Method::Ranking => "the codes in order, the one with most of it first.",
                    Method::Liking | Method::Description => "each code with its points.",
                    Method::Triangle | Method::DuoTrio | Method::Paired | Method::Preference => "the code that is ticked.",
                })
                " A second answer corrects the first, which is kept." }
            @if !told.is_empty() { p role=(if text.is_empty() { "status" } else { "alert" }) { b { (told) } } }
            form method="post" action={ "/tastings/" (name) "/paper" } {
                (token(visitor))
                label { "Ballots " textarea name="ballots" rows="12" cols="40" placeholder=(example) autocomplete="off" spellcheck="false" { (text) } }
                p { button { "Take them down" } }
            }
            p { a href={ "/tastings/" (name) } { "Back to the count" } }
        }
    };
    page(&Frame::of(visitor, "Paper ballots", super::WAY.address), &body)
}
