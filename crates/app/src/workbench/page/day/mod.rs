//! The day: what is done when, counted back from serving; what really happened is told at the task itself.
//!
//! All that is asked and told stands in the page's address, so that it can be kept, sent and printed.

mod asked;
mod fixing;
mod lists;
mod soonest;
mod tasks;

use super::{Way, addresses::asking};
use crate::asked::day::refused;
use crate::book::Opened;
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::asset::address;
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use crate::workbench::page::formula::Patience;
use asked::Asked;
use axum::Router;
use axum::extract::{Query, State};
use axum::routing::get;
use maud::{Markup, html};
use plan::alternatives::{NotThatWay, planned};
use plan::day::{Timeline, Wanted, timeline};
use plan::engine::Propagation;
use plan::relief::relief;
pub use soonest::soonest;

pub const WAY: Way = Way { address: "/day", title: "The day", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/day", get(day))
        .route("/day/told", get(tasks::told))
        .route("/day/fixed", get(fixing::fix))
        .route("/day/prep", get(lists::prep))
        .route("/day/shopping", get(lists::shopping))
        .route("/day/calendar.ics", get(lists::calendar))
        .route("/day/prep.pdf", get(lists::prep_pdf))
}

/// What a page is asked, each key as often as it was said.
pub type Pairs = Vec<(String, String)>;

/// The day that is asked for.
fn plan(opened: &Opened, asked: &Asked) -> Result<(Wanted, Timeline), Refusal> {
    if !asked.has("formula") {
        return Err(Refusal::unfit("Nothing is chosen yet.", "tick what is served"));
    }
    let place = asked.place();
    let mut wanted = asked.day()?.wanted(opened, &place).map_err(|failure| Refusal::amiss(&failure))?;
    let mut patience = Patience::begin();
    let day = match asked.way()? {
        None => {
            let made = if asked.is_any_day() {
                soonest(&wanted, &mut patience)
            } else {
                timeline(&wanted, &Propagation, &mut patience).map(|day| (wanted.serve.clone(), day))
            };
            let (serve, day) = made.map_err(|why| Refusal::amiss(&refused(why, &wanted)))?;
            wanted.serve = serve;
            let relief = relief(&opened.book, &wanted, &day, &Propagation, &mut patience);
            Timeline { relief, ..day }
        }
        Some(way) => {
            let not_so = |why| match why {
                NotThatWay::Day(why) => Refusal::amiss(&refused(why, &wanted)),
                NotThatWay::Formula(_) => Refusal::unfit("It cannot be made that way.", publish::day::reason(&why)),
            };
            planned(way, &opened.book, &wanted, &Propagation, &mut patience).map_err(not_so)?.timeline
        }
    };
    Ok((wanted, day))
}

async fn day(State(desk): State<Desk>, visitor: Visitor, Query(pairs): Query<Pairs>) -> Answer {
    let opened = desk.book();
    let mut asked = Asked { pairs };
    let body = tokio::task::block_in_place(|| {
        let is_chosen = asked.has("formula");
        let planned = is_chosen.then(|| plan(&opened, &asked));
        let wanted = planned.as_ref().and_then(|one| one.as_ref().ok()).map(|(wanted, _)| wanted);
        // What is told and fixed from here on is meant of the day that is shown.
        if let Some(wanted) = wanted.filter(|_| asked.is_any_day()) {
            asked = Asked { pairs: asked.with("serve", &wanted.serve.strftime("%Y-%m-%dT%H:%M").to_string()) };
        }
        html! {
            main #work.day {
                h1 { "The day" }
                (asked::form(&opened, &asked, wanted))
                @match &planned {
                    None => p { "Tick what is served, say when it is on the table, and everything is counted back from there." },
                    Some(Err(refusal)) => { div.refused role="alert" { (refusal.words()) } (tasks::told_so_far(&asked)) (fixing::so_far(&asked, None)) }
                    Some(Ok((wanted, day))) => (shown(&opened, &asked, wanted, day)),
                }
                script type="module" src=(address("day.js")) {}
            }
        }
    });
    page(&Frame::of(&visitor, "The day", WAY.address), &body)
}

fn shown(opened: &Opened, asked: &Asked, wanted: &Wanted, day: &Timeline) -> Markup {
    let served = day.served.strftime("%A %-d %B, on the table at %H:%M").to_string();
    let one_alone = wanted.formulas.len() == 1 && !asked.has_told();
    let lead = |job: usize| (day.jobs[job].is_step() && !asked.has("way")).then(|| format!("#tell-{job}"));
    html! {
        section aria-labelledby="served" {
            h2 #served { (served) }
            @if day.served > wanted.serve {
                p.late role="status" { b { "It cannot be on the table at " (wanted.serve.strftime("%H:%M").to_string()) "." } " This is the soonest; " a href="#way" { "what is in the way" } " is told below." }
            }
            nav.ways aria-label="Lists of the day" {
                a href=(asking("/day/prep", &asked.pairs)) { "What to do, to tick off" }
                a href=(asking("/day/shopping", &asked.pairs)) { "What to buy" }
                a href=(asking("/day/calendar.ics", &asked.pairs)) download="day.ics" { "For the calendar" }
                @if cfg!(feature = "pdf") { a href=(asking("/day/prep.pdf", &asked.pairs)) { "On paper (PDF)" } }
            }
            (tasks::told_so_far(asked))
            (fixing::so_far(asked, Some(day)))
            div.planned {
                div {
                    figure.day-chart tabindex="0" { (publish::day::leading(day, &lead)) }
                    div.moving {
                        p #moving hidden { "Drag a step along the hours, or move it with the arrow keys and press Enter: it is fixed there, and the rest is planned around it." }
                        button type="button" hidden data-way="back" { "Undo" }
                        button type="button" hidden data-way="forth" { "Redo" }
                    }
                    (tasks::list(asked, wanted, day))
                }
                section aria-labelledby="way" {
                    h2 #way { "What is in the way" }
                    (publish::day::come_to(day))
                }
            }
            @if one_alone { (ways(opened, asked, wanted)) }
        }
    }
}

/// The other ways to spread the one formula over the day, once they are asked for.
fn ways(opened: &Opened, asked: &Asked, wanted: &Wanted) -> Markup {
    html! {
        section #ways aria-labelledby="other" {
            h2 #other { "Other ways to spread it" }
            @if asked.has("ways") {
                @match plan::alternatives::alternatives(&opened.book, wanted, &Propagation, &mut Patience::begin()) {
                    Ok(all) => (publish::day::alternatives_markup(&all, wanted, &|way| asking("/day", &asked.with("way", way)))),
                    Err(why) => div.refused role="alert" { (Refusal::amiss(&refused(why, wanted)).words()) },
                }
            } @else {
                p { a href={ (asking("/day", &asked.with("ways", "yes"))) "#ways" } { "Set them side by side" } ": in one go, overnight, long and cold, each dosed so that it works." }
            }
            @if asked.has("way") { p { a href=(asking("/day", &asked.without("way"))) { "Back to the formula as it is written" } } }
        }
    }
}
