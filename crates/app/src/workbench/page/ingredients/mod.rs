//! The ingredients: searched, each figure with its source, and those of the author's own added and changed.

mod own;

use super::Way;
use super::addresses::{asking, coded};
use super::written::{self, Said, Written};
use crate::book::Opened;
use crate::ingredient::{facts, holding, source};
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use crate::workbench::hand::Reach;
use ::formula::ingredient::{Figure, datasets};
use ::formula::{Ingredient, Pantry};
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::routing::get;
use maud::{Markup, html};
use quantity::print;
use serde::Deserialize;
use std::sync::Arc;

pub const WAY: Way = Way { address: "/ingredients", title: "Ingredients", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new().route("/ingredients", get(all).post(own::begun)).route("/ingredients/{name}", get(one).post(own::changed))
}

/// So many stand on a page.
const ON_A_PAGE: usize = 60;

#[derive(Default, Deserialize)]
#[serde(default)]
struct Sought {
    words: String,
    own: String,
    from: String,
}

async fn all(State(desk): State<Desk>, visitor: Visitor, Query(sought): Query<Sought>) -> Answer {
    listed(&desk, &visitor, &sought, (&html! {}, &Said::new()))
}

/// The page of those that are looked for, with why a new one was refused, and what is typed of it already.
fn listed(desk: &Desk, visitor: &Visitor, sought: &Sought, (why, typed): (&Markup, &Said)) -> Answer {
    let opened = desk.book();
    let words: Vec<String> = sought.words.split_whitespace().map(str::to_owned).collect();
    let mut found = holding(&opened.book.pantry, &words);
    found.retain(|one| one.own || sought.own.is_empty());
    let from = sought.from.parse::<usize>().unwrap_or(0).min(found.len());
    let more = found.len().saturating_sub(from + ON_A_PAGE);
    let at =
        |from: usize| asking(WAY.address, &[("words", sought.words.as_str()), ("own", &sought.own), ("from", &from.to_string())]);
    let body = html! {
        main #work {
            h1 { "Ingredients" }
            (why)
            (super::settings::ways("", visitor))
            form.finding role="search" method="get" {
                label { "Words of the name " input type="search" name="words" value=(sought.words) enterkeyhint="search"; }
                label.tick { input type="checkbox" name="own" value="yes" checked[!sought.own.is_empty()]; " only our own" }
                button { "Find" }
            }
            @if found.is_empty() {
                p { "No ingredient is called so." @if let Some(near) = opened.book.pantry.nearest(&sought.words) { " Did you mean " a href={ "/ingredients/" (coded(near)) } { (near) } "?" } }
            } @else {
                (table(&found[from..found.len() - more]))
                p {
                    @if from > 0 { a href=(at(from.saturating_sub(ON_A_PAGE))) { "Those before" } " " }
                    @if more > 0 { a href=(at(from + ON_A_PAGE)) { (more) " more" } }
                }
            }
            (own::form(&opened, visitor, typed))
            (sources())
        }
    };
    page(&Frame::of(visitor, "Ingredients", WAY.address), &body)
}

/// The figures of the list.
const SHOWN: [Figure; 5] = [Figure::Water, Figure::Protein, Figure::Fat, Figure::Sugars, Figure::Fibre];

fn table(found: &[Arc<Ingredient>]) -> Markup {
    html! {
        div.scroll tabindex="0" role="group" aria-label="Ingredients with their figures" {
            table.wares {
                caption { "g in 100 g; – is not known, never nothing" }
                thead { tr {
                    th scope="col" { "ingredient" } th scope="col" { "name in formulas" }
                    @for figure in SHOWN { th.number scope="col" { (figure.title().trim_start_matches("of which ")) } }
                    th scope="col" { "source" }
                } }
                tbody {
                    @for one in found {
                        tr {
                            th scope="row" { a href={ "/ingredients/" (coded(&one.name)) } { (one.title) } @if one.own { " " span.fine { "our own" } } }
                            td { code { (one.name) } }
                            @for figure in SHOWN { td.number data-what=(figure.title().trim_start_matches("of which ")) { (one.composition.get(figure).map_or_else(|| "–".to_owned(), |value| print::number(value, 1))) } }
                            td.fine { (source(one)) }
                        }
                    }
                }
            }
        }
    }
}

fn sources() -> Markup {
    html! {
        details {
            summary { "Where the figures come from" }
            @for set in datasets() {
                p { b { (set.title) } ", " (set.release) ". Licence: " (set.licence) ". " (set.attribution) }
            }
        }
    }
}

async fn one(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(asked): Query<Written>) -> Answer {
    let page = shown(&desk, &visitor, &name, &Said::new()).await?;
    let just = written::written(&asked, &page.reach);
    page.under(&visitor, &just)
}

/// The page of one, made.
struct Page {
    title: String,
    body: Markup,
    reach: Reach,
}

impl Page {
    /// Shows it under what was just written or refused.
    fn under(&self, visitor: &Visitor, said: &Markup) -> Answer {
        let body = html! { main #work { h1 { (self.title) } (said) (self.body) } };
        page(&Frame::of(visitor, &self.title, WAY.address), &body)
    }
}

/// The page of one, with what is typed of it already.
async fn shown(desk: &Desk, visitor: &Visitor, name: &str, typed: &Said) -> Result<Page, Refusal> {
    let opened = desk.book();
    let near = || opened.book.pantry.nearest(name).map(|near| format!(" Did you mean “{near}”?")).unwrap_or_default();
    let missing = || Refusal::no_such(format!("No ingredient is called “{name}”.{}", near()));
    let one = opened.book.pantry.find(name).ok_or_else(missing)?;
    let used: Vec<(String, String)> = tokio::task::block_in_place(|| {
        let uses = |formula: &::formula::Formula| {
            formula.lines().any(|(_, line)| line.ingredient().is_some_and(|own| own.name == one.name))
        };
        let all = opened.formulas().into_iter().filter(uses);
        all.map(|formula| (formula.name.clone(), formula.head.title)).collect()
    });
    let (form, reach) = own::change(desk, one, visitor, typed).await?;
    let body = html! {
        p.fine { a href="/ingredients" { "All ingredients" } }
        dl.facts { @for (what, value) in facts(one) { div { dt { (what) } dd { (value) } } } }
        @if !used.is_empty() {
            h2 { "Used in" }
            ul { @for (name, title) in &used { li { a href=(super::addresses::of_formula(name, "")) { (title) } } } }
        }
        (figures(&opened, one))
        (form)
    };
    Ok(Page { title: one.title.clone(), body, reach })
}

/// Where a figure comes from: what is written of it, what it is like, or what it is mixed of.
fn source_of(opened: &Opened, one: &Ingredient, figure: Figure) -> String {
    if !one.parts.is_empty() {
        return "worked out of what it is mixed of".to_owned();
    }
    let Some((stated, like)) = own::stated(opened, one) else { return source(one) };
    if stated.contains(&figure.name().to_owned()) || (figure == Figure::Sodium && stated.iter().any(|name| name == "salt")) {
        return source(one);
    }
    // One of our own may take the name of the table's one that it is like.
    let named = |like: String| {
        if like == one.name { Pantry::built_in().find(&like).cloned() } else { opened.book.pantry.find(&like).cloned() }
    };
    match like.and_then(named) {
        Some(like) if like.composition.get(figure) == one.composition.get(figure) => source_of(opened, &like, figure),
        _ => "worked out from the others, or from what it is like".to_owned(),
    }
}

fn figures(opened: &Opened, one: &Ingredient) -> Markup {
    let (known, unknown): (Vec<&Figure>, Vec<&Figure>) =
        Figure::ALL.iter().partition(|figure| one.composition.get(**figure).is_some());
    html! {
        h2 { "In 100 g, edible portion" }
        div.scroll tabindex="0" role="group" aria-label="Figures in 100 g" {
            table.wares {
                thead { tr { th scope="col" { "figure" } th.number scope="col" { "in 100 g" } th scope="col" { "source" } } }
                tbody { @for figure in known { tr {
                    th scope="row" { (figure.title()) }
                    td.number { (print::number(one.composition.get(*figure).unwrap_or_default(), 3)) "\u{a0}" (figure.unit()) }
                    td.fine { (source_of(opened, one, *figure)) }
                } } }
            }
        }
        @if !unknown.is_empty() { p.fine { "Not known, never nothing: " (unknown.iter().map(|figure| figure.title()).collect::<Vec<_>>().join(", ")) "." } }
    }
}
