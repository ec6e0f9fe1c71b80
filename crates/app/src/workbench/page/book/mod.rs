//! The book: every formula, searched and chosen, with what is to be said of it and when it changed last.

pub mod demo;
mod fresh;
mod tour;

use super::Way;
use super::addresses::{asking, of_formula};
use crate::book::Opened;
use crate::workbench::answer::{Answer, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use axum::Router;
use axum::extract::{Query, State};
use axum::routing::{get, post};
use formula::{Diagnostic, Formula, Severity};
use jiff::Timestamp;
use maud::{Markup, html};
use publish::site::Card;
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};
use store::Kind;

pub const WAY: Way = Way { address: "/", title: "The book", role: Role::Helper };

/// So many formulas stand on a page.
const ON_A_PAGE: usize = 60;

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/", get(book))
        .route("/new", post(fresh::begun))
        .route("/tour", get(tour::tour))
        .route("/demo", post(demo::laid))
        .route("/demo/away", post(demo::taken_away))
        .route("/demo/back", post(demo::brought_back))
}

/// What is looked for.
#[derive(Clone, Default, Deserialize)]
#[serde(default)]
struct Sought {
    words: String,
    tag: String,
    with: String,
    remarks: String,
    from: String,
}

/// A formula's card, and when and by what it changed last.
struct Listed {
    card: Card,
    changed: Option<Change>,
}

/// The last change that is remembered.
#[derive(Clone)]
struct Change {
    at: Timestamp,
    what: String,
}

async fn book(State(desk): State<Desk>, visitor: Visitor, Query(sought): Query<Sought>) -> Answer {
    let opened = desk.book();
    let title = if opened.book.settings.title.is_empty() { "The book" } else { &opened.book.settings.title };
    if opened.book.formulas.is_empty() {
        let body = html! { main #work { h1 { (title) } (demo::empty(&desk, &visitor).await) } };
        return page(&Frame::of(&visitor, title, WAY.address), &body);
    }
    let changed = changes(&desk).await;
    let body = tokio::task::block_in_place(|| {
        let names: Vec<&str> = opened.book.formulas.keys().map(String::as_str).collect();
        let card = |checked: formula::Checked<Formula>| Card::of(&checked.value, &opened.book.settings);
        let all: Vec<Listed> = opened
            .each(&names, card)
            .into_iter()
            .map(|card| Listed { changed: changed.get(&card.name).cloned(), card })
            .collect();
        html! {
            main #work {
                h1 { (title) }
                p.fine { (counted(all.len())) " · " a href="/changes" { "What was changed" } @if visitor.role >= Role::Owner { " · " a href="/settings/book" { "Its settings" } } " · " a href="/tour" { "Five steps to know the workbench" } }
                @if changed.is_empty() { (welcome()) }
                (finding(&all, &sought))
                (found(&opened, &all, &sought))
                (fresh::form(&all, &visitor))
            }
        }
    });
    page(&Frame::of(&visitor, title, WAY.address), &body)
}

/// What stands there until something was changed for the first time.
fn welcome() -> Markup {
    html! {
        section.welcome aria-labelledby="welcome" {
            h2 #welcome { "Here for the first time?" }
            p { "Open a formula and change a figure: what it will do follows beside it, and Undo takes everything back. "
                "Or walk " a href="/tour" { "five steps in five minutes" } ": adapt a formula, see why it warns, exchange its leaven, plan its morning, publish it." }
        }
    }
}

fn counted(formulas: usize) -> String {
    if formulas == 1 { "1 formula".to_owned() } else { format!("{formulas} formulas") }
}

/// The last change of every formula, of strokes and of what was saved.
async fn changes(desk: &Desk) -> BTreeMap<String, Change> {
    let Ok(store) = desk.store() else { return BTreeMap::new() };
    let mut last: BTreeMap<String, Change> = BTreeMap::new();
    let mut take = |name: &str, at: Timestamp, what: &str| {
        let stem = name.rsplit('/').next().unwrap_or(name);
        let change = Change { at, what: what.to_owned() };
        let known = last.entry(stem.to_owned()).or_insert_with(|| change.clone());
        if known.at < at {
            *known = change;
        }
    };
    for one in store.revisions().await.unwrap_or_default().iter().filter(|one| one.kind == Kind::Formula) {
        take(&one.name, one.at, if one.note.is_empty() { "saved" } else { &one.note });
    }
    for one in store
        .all_strokes()
        .await
        .unwrap_or_default()
        .iter()
        .filter(|one| one.kind == Kind::Formula && !one.undone && demo::is_own(one))
    {
        take(&one.name, one.at, &one.what);
    }
    last
}

/// The field and the choices to find formulas by.
fn finding(all: &[Listed], sought: &Sought) -> Markup {
    let tags: BTreeSet<&str> = all.iter().flat_map(|one| one.card.tags.iter().map(String::as_str)).collect();
    let uses = all.iter().flat_map(|one| &one.card.ingredients);
    let ingredients: BTreeMap<&str, &str> = uses.map(|one| (one.name.as_str(), one.title.as_str())).collect();
    html! {
        form.finding role="search" method="get" {
            label { "Find by title, tag or ingredient " input type="search" name="words" value=(sought.words) enterkeyhint="search"; }
            button { "Find" }
            details open[!sought.tag.is_empty() || !sought.with.is_empty() || !sought.remarks.is_empty()] {
                summary { "By tag, ingredient, remarks" }
                    label { "Tag " select name="tag" {
                        option value="" { "any" }
                        @for tag in tags { option value=(tag) selected[tag == sought.tag] { (tag) } }
                    } }
                    label { "Made with " select name="with" {
                        option value="" { "anything" }
                        @for (name, title) in ingredients { option value=(name) selected[name == sought.with] { (title) } }
                    } }
                    label { "Remarks " select name="remarks" {
                        option value="" { "with or without" }
                        option value="with" selected[sought.remarks == "with"] { "to look at" }
                        option value="without" selected[sought.remarks == "without"] { "nothing amiss" }
                    } }
            }
        }
    }
}

impl Sought {
    fn fits(&self, card: &Card) -> bool {
        let ingredients = card.ingredients.iter().map(|one| format!("{} {}", one.title, one.name));
        let said = [card.title.clone(), card.name.clone()].into_iter().chain(ingredients);
        let text = said.collect::<Vec<_>>().join(" ").to_lowercase();
        // A tag is meant from its start: “milk” does not find “no-milk”.
        let holds = |word: &str| text.contains(word) || card.tags.iter().any(|tag| tag.to_lowercase().starts_with(word));
        self.words.to_lowercase().split_whitespace().all(holds)
            && (self.tag.is_empty() || card.tags.contains(&self.tag))
            && (self.with.is_empty() || card.ingredients.iter().any(|one| one.name == self.with))
    }

    /// The address of what is looked for, from the formula of that number on.
    fn from(&self, number: usize) -> String {
        let number = number.to_string();
        let pairs = [
            ("words", self.words.as_str()),
            ("tag", &self.tag),
            ("with", &self.with),
            ("remarks", &self.remarks),
            ("from", &number),
        ];
        asking("/", &pairs)
    }
}

/// Those that fit, so many to a page, each proof-read.
fn found(opened: &Opened, all: &[Listed], sought: &Sought) -> Markup {
    let kitchen = opened.book.kitchen();
    let fitting: Vec<&Listed> = all.iter().filter(|one| sought.fits(&one.card)).collect();
    let names = |some: &[&Listed]| some.iter().map(|one| one.card.name.clone()).collect::<Vec<_>>();
    let from = sought.from.parse::<usize>().unwrap_or(0).min(fitting.len());
    let judged = |some: &[&Listed]| -> Vec<Vec<Diagnostic>> {
        let names = names(some);
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        opened.each(&names, |checked| opened.proof_read(checked, &kitchen))
    };
    // Only who asks for remarks waits until every formula is proof-read.
    let (shown, more): (Vec<(&Listed, Vec<Diagnostic>)>, usize) = if sought.remarks.is_empty() {
        let some = &fitting[from..(from + ON_A_PAGE).min(fitting.len())];
        (some.iter().copied().zip(judged(some)).collect(), fitting.len() - from - some.len())
    } else {
        let wants_some = sought.remarks == "with";
        let all = fitting.iter().copied().zip(judged(&fitting)).filter(|(_, found)| found.is_empty() != wants_some);
        let all: Vec<_> = all.skip(from).collect();
        let more = all.len().saturating_sub(ON_A_PAGE);
        (all.into_iter().take(ON_A_PAGE).collect(), more)
    };
    html! {
        section aria-label="Formulas" {
            @if shown.is_empty() { p { "No formula is like that. " a href="/" { "Show all" } } }
            ul.index { @for (one, found) in &shown { (item(one, found)) } }
            @if from > 0 || more > 0 {
                p {
                    @if from > 0 { a href=(sought.from(from.saturating_sub(ON_A_PAGE))) { "Those before" } " " }
                    @if more > 0 { a href=(sought.from(from + ON_A_PAGE)) { (more) " more" } }
                }
            }
        }
    }
}

fn item(one: &Listed, found: &[Diagnostic]) -> Markup {
    let card = &one.card;
    let facts: Vec<String> =
        [Some(card.makes.clone()), card.time.clone()].into_iter().flatten().filter(|fact| !fact.is_empty()).collect();
    html! {
        li {
            h2 { a href=(of_formula(&card.name, "")) { (if card.title.is_empty() { &card.name } else { &card.title }) } }
            @if !card.lead.is_empty() { p { (card.lead) } }
            @if !facts.is_empty() { p.fine { (facts.join(" · ")) } }
            @if !card.tags.is_empty() { p.fine.tags { @for tag in &card.tags { a href=(asking("/", &[("tag", tag)])) { (tag) } " " } } }
            p.fine {
                (remarks(found))
                @if let Some(change) = &one.changed { " · Last changed " (super::when(&change.at)) ": " (change.what) }
            }
        }
    }
}

/// "2 warnings, 1 piece of advice".
fn remarks(found: &[Diagnostic]) -> Markup {
    let count = |severity| found.iter().filter(|one| one.severity == severity).count();
    let kinds = [
        (Severity::Error, "error", "errors"),
        (Severity::Warning, "warning", "warnings"),
        (Severity::Advice, "piece of advice", "pieces of advice"),
    ];
    let told = kinds.map(|(severity, one, more)| (count(severity), one, more)).into_iter().filter(|(n, ..)| *n > 0);
    let told: Vec<String> = told.map(|(n, one, more)| format!("{n} {}", if n == 1 { one } else { more })).collect();
    html! {
        @if told.is_empty() { "Nothing amiss" } @else { strong { (told.join(", ")) } }
    }
}
