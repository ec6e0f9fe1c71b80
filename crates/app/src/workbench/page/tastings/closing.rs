//! How many have answered, without what; and the end of a sitting, which is asked for first.

use super::{last, leads};
use crate::tasting::Held;
use crate::tasting::progress::{NOBODY, Progress, clear, close, progress};
use crate::workbench::answer::{Answer, Refusal, page, parts, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use crate::workbench::page::addresses::{asking, coded};
use axum::extract::{Path, State};
use maud::{Markup, html};
use quantity::print::capital;

/// How many have answered.
pub fn count(held: &Held, all: Progress) -> Markup {
    let address = format!("/tastings/{}/count", held.tasting.name);
    html! {
        p #count data-count=(address) role="status" {
            b { (all) }
            @match all.begun {
                0 => ".",
                1 => "; 1 more has begun.",
                more => { "; " (more) " more have begun." }
            }
        }
    }
}

pub async fn counted(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    parts(&count(&held, progress(desk.store()?, &held).await?))
}

/// Asks before a tasting is closed; where nobody answered everything, what may be done instead.
pub async fn asked(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    if held.sitting.closed.is_some() {
        return see(&format!("/tastings/{}", coded(&name)));
    }
    let all = progress(desk.store()?, &held).await?;
    let body = html! {
        main #work {
            h1 { (held.tasting.title) ": close the tasting?" }
            @if all.whole > 0 {
                p { b { (all) ". After closing nobody can answer any more." } }
                @if all.begun > 0 { p { (all.begun) @if all.begun == 1 { " has" } @else { " have" } " begun and would be left out." } }
                p { "It cannot be opened again. What was found can be read from then on." }
                form method="post" action={ "/tastings/" (name) "/close" } { (token(&visitor)) button { "Close it now" } }
            } @else {
                p { b { (capital(NOBODY)) "." } }
                p { "Go on tasting, or clear the table: it can then be laid anew. A cleared table is no evidence, nobody can answer at it any more, and what was answered in part stays in the book’s memory." }
                form method="post" action={ "/tastings/" (name) "/clear" } { (token(&visitor)) button { "Clear the table" } }
            }
            p { a href={ "/tastings/" (name) } { "Go on tasting" } }
        }
    };
    page(&Frame::of(&visitor, "Close the tasting", super::WAY.address), &body)
}

pub async fn closed(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    let refused = |failure: crate::failure::Failure| {
        Refusal::conflict(format!("{}.", capital(failure.words().0)), "go on tasting, or clear the table")
    };
    close(desk.store()?, &held).await.map_err(refused)?;
    see(&format!("/tastings/{}", coded(&name)))
}

pub async fn cleared(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>) -> Answer {
    leads(&visitor)?;
    let held = last(&desk, &name).await?;
    let refused = |failure: crate::failure::Failure| Refusal::conflict(format!("{}.", capital(failure.words().0)), "");
    clear(desk.store()?, &held).await.map_err(refused)?;
    see(&asking(&format!("/tastings/{}", coded(&name)), &[("told", "The table is cleared.".to_owned())]))
}
