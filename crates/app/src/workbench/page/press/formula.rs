//! What a formula gives besides its page: label, sheet, card, cost.

use super::apart;
use crate::commands::costing;
use crate::paid::said;
use crate::paper::{Paper, Printed, set};
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::Frame;
use crate::workbench::page::addresses::{coded, of_formula};
use crate::workbench::page::formula::{OnBench, Wanted};
use ::formula::{Formula, Severity};
use axum::extract::{Path, State};
use axum::http::header;
use axum::response::{Html, IntoResponse};
use bench::cost::Said;
use bench::label::{self, Law, Sold};
use maud::{Markup, html};
use std::collections::BTreeMap;

/// The formulas, each with what it gives.
pub fn list(desk: &Desk, titles: &BTreeMap<String, String>) -> Markup {
    let mut given = vec![
        ("label-eu", "label, EU"),
        ("label-uk", "label, UK"),
        ("label-us", "label, US"),
        ("sheet", "formula sheet"),
        ("cost", "cost"),
    ];
    if cfg!(feature = "pdf") {
        given.extend([("card.pdf", "card (PDF)"), ("sheet.pdf", "sheet (PDF)")]);
    }
    html! {
        section aria-labelledby="each" {
            h2 #each { "Formula by formula" }
            ul.past {
                @for (name, title) in titles {
                    li id={ "of-" (name) } {
                        b { a href=(of_formula(name, "")) { (title) } }
                        p.given {
                            @for (what, words) in &given { a href={ "/publish/" (coded(name)) "/" (what) } { (words) span.apart { ": " (title) } } }
                            @if desk.published().join(format!("{name}.html")).is_file() {
                                a href={ "/published/" (coded(name)) ".html" } { "page" span.apart { ": " (title) } }
                            }
                        }
                    }
                }
            }
            p.fine { "Labels are drafts, not advice: your authority decides." }
        }
    }
}

pub async fn given(State(desk): State<Desk>, visitor: Visitor, Path((name, what)): Path<(String, String)>) -> Answer {
    super::may_publish(&visitor)?;
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let checked = one.checked();
    if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
        return Err(Refusal::unfit("The formula has errors.", "mend them on its sheet first"));
    }
    let formula = checked.value;
    let law = match what.as_str() {
        "label" => Some(Law::by_language(&opened.book.settings.language)),
        "label-eu" => Some(Law::Eu),
        "label-uk" => Some(Law::Uk),
        "label-us" => Some(Law::Us),
        _ => None,
    };
    if let Some(law) = law {
        return labelled(&opened.book.settings, &formula, law);
    }
    // Without a memory the prices of now are told.
    let past = match what.as_str() {
        "cost" => Some(said(desk.store().ok(), &opened.book).await?),
        _ => None,
    };
    tokio::task::block_in_place(|| match what.as_str() {
        "sheet" => {
            let sheet = publish::sheet::sheet(&formula, &opened.book.kitchen(), &opened.book.settings);
            whole(publish::page::sheets(&[sheet], &opened.book.settings))
        }
        "card.pdf" => paper(Printed::Card, Paper::A5, &publish::print::card(&formula, &opened.book.settings)),
        "sheet.pdf" => {
            let settings = &opened.book.settings;
            let sheet = publish::sheet::sheet(&formula, &opened.book.kitchen(), settings);
            let words = publish::print::sheet(&sheet, &formula, settings);
            paper(Printed::Sheet, Paper::A4, &words)
        }
        "cost" => cost(&one, &formula, &visitor, past.as_deref()),
        _ => Err(Refusal::no_such("A formula gives no such thing.")),
    })
}

/// A page that brings its own look with it.
fn whole(text: String) -> Answer {
    Ok(([(header::CONTENT_SECURITY_POLICY, apart())], Html(text)).into_response())
}

fn labelled(settings: &::formula::read::BookSettings, formula: &Formula, law: Law) -> Answer {
    let sold = Sold { components: Vec::new(), eaten_as: None };
    let nothing = || Refusal::unfit(format!("“{}” makes nothing that could be labelled.", formula.head.title), "");
    let label = label::label(formula, settings, law, &sold).ok_or_else(nothing)?;
    whole(publish::label::html(&[label], settings))
}

fn paper(what: Printed, size: Paper, words: &serde_json::Value) -> Answer {
    let bytes = set(what, size, words).map_err(|failure| Refusal::amiss(&failure))?;
    Ok(([(header::CONTENT_TYPE, "application/pdf")], bytes).into_response())
}

/// Letters in a line of the costing.
const WIDTH: usize = 84;

fn cost(one: &OnBench, formula: &Formula, visitor: &Visitor, past: Option<&[Said]>) -> Answer {
    let book = &one.opened.book;
    let around = Wanted::default().around(one.opened)?;
    let costing =
        costing(book, formula, &around, (&book.prices.wanted, None), past).map_err(|failure| Refusal::amiss(&failure))?;
    let body = html! {
        main #work {
            h1 { (formula.head.title) ": cost" }
            p.fine { a href="/publish" { "Back to publishing" } " · " a href="/settings/prices" { "Prices" } }
            pre.drawing tabindex="0" { (publish::costing::text(&costing, WIDTH)) }
        }
    };
    page(&Frame::of(visitor, "Cost", ""), &body)
}
