//! What a formula will do, beside its sheet: at a glance, and as a whole story; and how sure that is.

use super::OnBench;
use super::kitchen::Wanted;
use crate::book::Opened;
use crate::workbench::answer::{Answer, Refusal, parts as answer_parts};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::routing::get;
use bench::forecast::{Forecast, Surroundings, foresee, foresee_at_once};
use bench::label::{Law, Sold, label};
use formula::{Checked, Formula, Severity};
use maud::{Markup, html};
use publish::outlook::{Glance, glance, markup, of_label, story};

/// So many kitchens are tried for the bands: enough for the eye, in a fraction of a second.
const KITCHENS: usize = 200;

pub fn routes() -> Router<Desk> {
    Router::new().route("/formula/{name}/bands", get(bands)).route("/formula/{name}/story", get(whole_story))
}

/// Where it stands on the page; what takes longer is filled by the page's own script.
pub fn frame(glance: &Markup) -> Markup {
    html! {
        aside.ahead #ahead aria-label="What it will do" {
            h2 { "What it will do" }
            (glance)
            div #bands {}
            details #whole-story { summary { "The whole story" } div #story {} }
        }
    }
}

/// The figures of a formula as it stands.
pub fn parts(opened: &Opened, checked: &Checked<Formula>, wanted: &Wanted) -> Result<Markup, Refusal> {
    at_a_glance(opened, checked, wanted, foresee)
}

/// The same while somebody types; what takes longer stays as it stands on the page until it follows.
pub fn at_once(opened: &Opened, checked: &Checked<Formula>, wanted: &Wanted) -> Result<Markup, Refusal> {
    at_a_glance(opened, checked, wanted, foresee_at_once)
}

type Foresee = fn(&Formula, &Surroundings) -> Forecast;

fn at_a_glance(opened: &Opened, checked: &Checked<Formula>, wanted: &Wanted, foresee: Foresee) -> Result<Markup, Refusal> {
    if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
        return Ok(html! { div #glance { p.fine { "It cannot be foreseen while the formula has errors." } } });
    }
    let formula = &checked.value;
    let forecast = foreseen(opened, formula, wanted, foresee)?;
    let units = publish::Units::of(&opened.book.settings);
    Ok(html! {
        div #glance {
            dl {
                @for one in glance(formula, &forecast, units) { (figure(&one)) }
                @if let Some(label) = label(formula, &opened.book.settings, Law::by_language(&opened.book.settings.language), &Sold::default()) {
                    (figure(&of_label(&label)))
                }
            }
        }
    })
}

fn foreseen(opened: &Opened, formula: &Formula, wanted: &Wanted, foresee: Foresee) -> Result<Forecast, Refusal> {
    let around = wanted.around(opened)?;
    let mut forecast = foresee(formula, &around);
    let costs = bench::cost::cost(formula, &forecast, &opened.book.prices, &opened.book.settings);
    forecast.cost = costs.map(|costs| costs.with_hands(plan::hands(formula), &opened.book.prices));
    Ok(forecast)
}

/// The whole story, for those who open it.
async fn whole_story(
    State(desk): State<Desk>,
    _visitor: Visitor,
    Path(name): Path<String>,
    Query(wanted): Query<Wanted>,
) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let work = || {
        let checked = one.checked();
        if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
            return Ok::<_, Refusal>(html! { div #story {} });
        }
        let forecast = foreseen(&opened, &checked.value, &wanted, foresee)?;
        let units = publish::Units::of(&opened.book.settings);
        Ok(html! { div #story { (markup(&story(&checked.value, &forecast, units))) } })
    };
    let question = format!("story {} {}", one.rests_on(&wanted)?, wanted.key());
    let made = tokio::task::block_in_place(|| desk.worked_out().once(question, work))?;
    answer_parts(&made)
}

fn figure(one: &Glance) -> Markup {
    html! {
        div id={ "glance-" (one.key) } class=[one.minds.then_some("minds")] {
            dt { (one.what) }
            dd {
                span.figure { (one.figure) } @if one.minds { span.apart { " Look at this: " } }
                // The page leaves what stands there, until it follows.
                @if one.follows { " " span.fine data-follows {} } @else if !one.beside.is_empty() { " " span.fine { (one.beside) } }
            }
        }
    }
}

/// How far the figures may part from what is foreseen, by trying it in many kitchens.
async fn bands(State(desk): State<Desk>, _visitor: Visitor, Path(name): Path<String>, Query(wanted): Query<Wanted>) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let work = || {
        let checked = one.checked();
        if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
            return Ok::<_, Refusal>(html! { div #bands {} });
        }
        let around = wanted.around(&opened)?;
        let spread = bench::draws::spread(&checked.value, &around, KITCHENS, 1);
        let units = publish::Units::of(&opened.book.settings);
        Ok(html! { div #bands { (publish::outlook::spread_markup(&checked.value, &spread, units)) } })
    };
    let question = format!("bands {} {}", one.rests_on(&wanted)?, wanted.key());
    let made = tokio::task::block_in_place(|| desk.worked_out().once(question, work))?;
    answer_parts(&made)
}
