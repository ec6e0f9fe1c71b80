//! The day below the sheet: when to do what, counted back from serving.

use super::OnBench;
use super::kitchen::Wanted;
use crate::moment;
use crate::workbench::answer::{Answer, Refusal, parts};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::page::day::soonest;
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::routing::get;
use formula::Severity;
use maud::{Markup, html};
use plan::day::{Wanted as Asked, Workplace};
use plan::engine::Watch;
use std::sync::Arc;
use std::time::{Duration, Instant};

pub fn routes() -> Router<Desk> {
    Router::new().route("/formula/{name}/day", get(day))
}

/// Where it stands on the page.
pub fn frame(name: &str) -> Markup {
    html! {
        section.today #today aria-label="The day" {
            h2 { "The day" }
            div #day { p.fine { "Planning…" } noscript { p { "Without scripts the day’s own page plans it:" } } }
            p.fine.way { a href={ "/day?formula=" (name) } { "Plan it with other formulas, actual times and alternatives" } }
        }
    }
}

/// A while that nobody minds to wait beside the sheet.
pub struct Patience(Instant);

impl Patience {
    /// Begins to wait.
    pub fn begin() -> Self {
        Self(Instant::now())
    }
}

impl Watch for Patience {
    fn wants_to_stop(&mut self) -> bool {
        self.0.elapsed() > Duration::from_secs(3)
    }

    fn is_better(&mut self, _aim: usize, _value: i32) {}
}

async fn day(State(desk): State<Desk>, _visitor: Visitor, Path(name): Path<String>, Query(wanted): Query<Wanted>) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let work = || {
        let checked = one.checked();
        if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
            return Ok::<_, Refusal>(html! { div #day { p.fine { "It cannot be planned while the formula has errors." } } });
        }
        let zone = moment::zone(None)?;
        let now = moment::now(None, &zone)?;
        let clock = wanted.serve.as_deref().filter(|serve| !serve.is_empty()).unwrap_or("09:30");
        let serve = moment::read(clock, &zone, &now).map_err(|failure| Refusal::amiss(&failure))?;
        let kitchen = wanted.kitchen(&opened)?;
        let asked = Asked {
            formulas: vec![Arc::new(checked.value)],
            serve,
            now,
            there: Default::default(),
            happened: Vec::new(),
            seen: Vec::new(),
            fixes: Vec::new(),
            place: Workplace::of(&kitchen),
            around: wanted.around(&opened)?,
        };
        Ok(match soonest(&asked, &mut Patience::begin()) {
            Ok((serve, day)) => html! {
                div #day {
                    p { b { (day.served.strftime("On the table on %A at %H:%M").to_string()) } @if day.served > serve { ": sooner it cannot be" } "." }
                    figure.day-chart tabindex="0" { (publish::day::leading(&day, &|_| None)) }
                    pre.drawing tabindex="0" { (publish::day::text(&day, 100)) }
                }
            },
            Err(_) => {
                html! { div #day { p { "That cannot be planned so. " a href={ "/day?formula=" (name) } { "The day’s own page says why" } "." } } }
            }
        })
    };
    // The day counts from now, and a minute's answer is good for that minute.
    let question = format!("day {} {} {}", one.rests_on(&wanted)?, wanted.key(), jiff::Timestamp::now().as_second() / 60);
    let made = tokio::task::block_in_place(|| desk.worked_out().once(question, work))?;
    parts(&made)
}
