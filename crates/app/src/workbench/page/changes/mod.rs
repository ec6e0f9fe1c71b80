//! What was changed in the book, file by file: undone and done again here and on each file's own page, also where the
//! file itself is gone by it.

mod aside;

use super::addresses::{coded, of_formula};
use super::book::demo;
use super::{may_write_file, when, writes};
use crate::book::Opened;
use crate::memory::{file_of, is_aside, told};
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::{Reach, Way};
use axum::Router;
use axum::extract::{Form, State};
use axum::routing::{get, post};
use formula::read::stem;
use maud::{Markup, html};
use serde::Deserialize;
use std::collections::BTreeMap;
use store::Stroke;

/// Where all of it stands.
const HERE: &str = "/changes";

/// So many changes of a file are told; the rest is counted.
const MOST: usize = 8;

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/changes", get(changes))
        .route("/changes/back", post(back))
        .route("/changes/forth", post(forth))
        .route("/changes/take", post(aside::taken))
        .route("/changes/leave", post(aside::left))
}

/// The buttons that undo the last change of a file, and do it again; `to` is the page that they stand on.
pub fn undoing(file: &str, to: &str, reach: &Reach, visitor: &Visitor) -> Markup {
    let button = |way: &str, words: &str, what: Option<&str>| {
        html! { button data-way=(way) formaction={ (HERE) "/" (way) } disabled[what.is_none()] title=[what] { (words) } }
    };
    if !writes(visitor, file) {
        return html! { p.fine { "Only the book’s owner changes it." } };
    }
    html! {
        form.strokes method="post" action={ (HERE) "/back" } aria-label={ "What was changed in " (file) } {
            (token(visitor))
            input type="hidden" name="file" value=(file);
            input type="hidden" name="to" value=(to);
            (button("back", "Undo", reach.back.as_deref()))
            (button("forth", "Do again", reach.forth.as_deref()))
            span.fine { @match &reach.back { Some(last) => { "Last: " (last) }, None => "Nothing changed yet" } }
        }
    }
}

/// Every file that was changed, the latest first.
async fn by_file(desk: &Desk) -> Result<Vec<(String, Vec<Stroke>)>, Refusal> {
    let mut files: BTreeMap<String, Vec<Stroke>> = BTreeMap::new();
    let all = desk.store()?.all_strokes().await.map_err(told)?;
    for stroke in all.into_iter().filter(|one| !is_aside(&one.name)) {
        files.entry(file_of(stroke.kind, &stroke.name)).or_default().push(stroke);
    }
    let mut files: Vec<_> = files.into_iter().collect();
    files.sort_by_key(|(_, strokes)| std::cmp::Reverse(strokes.iter().map(|one| one.at).max()));
    Ok(files)
}

async fn changes(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    let opened = desk.book();
    let files = by_file(&desk).await?;
    let kept = aside::all(&desk, &opened, &visitor).await?;
    let body = html! {
        main #work.history {
            h1 { "What was changed" }
            p { "Every change of a file can be undone, today or next week: what was done last goes first, each file by itself." }
            (demo::gone(&opened, files.iter().map(|(file, strokes)| (file.as_str(), strokes.as_slice())), &visitor))
            (aside::markup(&kept, &visitor))
            @if files.is_empty() { p { "Nothing was changed yet." } }
            @for (file, strokes) in files.iter().filter(|(_, strokes)| !demo::is_untouched(strokes)) {
                section {
                    h2 { @match page_of(&opened, file) { Some(address) => a href=(address) { (file) }, None => (file) } }
                    @if !opened.text.files.contains_key(file) { p { "The file is not there now; the buttons bring it back." } }
                    (undoing(file, HERE, &Reach::of(strokes), &visitor))
                    (told_of(strokes))
                }
            }
            (of_the_demo(&opened, &files, &visitor))
        }
    };
    page(&Frame::of(&visitor, "What was changed", ""), &body)
}

/// What came with the demo book, which goes in one go, and comes back file by file.
fn of_the_demo(opened: &Opened, files: &[(String, Vec<Stroke>)], visitor: &Visitor) -> Markup {
    let untouched: Vec<_> = files.iter().filter(|(_, strokes)| demo::is_untouched(strokes)).collect();
    let is_here =
        demo::laid_here(files.iter().flat_map(|(_, strokes)| strokes)).iter().any(|file| opened.text.files.contains_key(*file));
    html! {
        @if is_here || !untouched.is_empty() {
            section {
                h2 #demo { "The demo book" }
                @if is_here && visitor.role >= Role::Owner { p { "All of it can go at once, what you changed in it too; the memory keeps every file as it was last." } (demo::away(visitor)) }
                @if !untouched.is_empty() {
                    details {
                        summary { (files_that(untouched.len())) @if is_here { " came with it and are as they came" } @else { " came and went with it" } }
                        @for (file, strokes) in untouched { h3 { (file) } (undoing(file, HERE, &Reach::of(strokes), visitor)) }
                    }
                }
            }
        }
    }
}

fn files_that(count: usize) -> String {
    if count == 1 { "1 file that".to_owned() } else { format!("{count} files that") }
}

fn told_of(strokes: &[Stroke]) -> Markup {
    html! {
        ul.past { @for one in strokes.iter().rev().take(MOST) { li {
            b { (when(&one.at)) } @if !one.by.is_empty() { ", " (one.by) } ": " (one.what) @if one.undone { span.fine { " · undone" } }
        } } }
        @if strokes.len() > MOST { p.fine { (strokes.len() - MOST) " earlier " @if strokes.len() == MOST + 1 { "one" } @else { "ones" } } }
    }
}

/// The page of a file, where it has one of its own.
fn page_of(opened: &Opened, file: &str) -> Option<String> {
    opened.text.files.get(file)?;
    let name = stem(file);
    match file.split_once('/').map(|(folder, _)| folder) {
        None => Some(format!("/settings/{name}")),
        Some("formulas") => Some(of_formula(name, "")),
        Some("ingredients") => Some("/ingredients".to_owned()),
        Some(folder @ ("kitchens" | "tastings")) => Some(format!("/{folder}/{}", coded(name))),
        Some("trials") => Some(format!("/trial/{}", coded(name))),
        _ => None,
    }
}

/// Which file is meant, and where the button stood.
#[derive(Deserialize)]
struct Meant {
    file: String,
    #[serde(default)]
    to: String,
}

async fn back(State(desk): State<Desk>, visitor: Visitor, Form(meant): Form<Meant>) -> Answer {
    step(&desk, &visitor, &meant, Way::Back).await
}

async fn forth(State(desk): State<Desk>, visitor: Visitor, Form(meant): Form<Meant>) -> Answer {
    step(&desk, &visitor, &meant, Way::Forth).await
}

async fn step(desk: &Desk, visitor: &Visitor, meant: &Meant, way: Way) -> Answer {
    may_write_file(visitor, &meant.file)?;
    // Only what was once changed here has anything to undo, so that no other name ever reaches the disk.
    if by_file(desk).await?.iter().all(|(file, _)| *file != meant.file) {
        return Err(Refusal::no_such("Nothing was changed in a file of that name."));
    }
    let opened = desk.step(&meant.file, way, &visitor.name).await?;
    let is_there = opened.text.files.contains_key(&meant.file);
    see(if is_there && is_of_this_house(&meant.to) { &meant.to } else { HERE })
}

/// Whether an address is a page's own path and leads nowhere else.
fn is_of_this_house(address: &str) -> bool {
    let is_plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '/' | '-' | '_' | '.' | '~' | '%');
    address.starts_with('/') && !address.starts_with("//") && address.chars().all(is_plain)
}

#[cfg(test)]
mod tests {
    use super::is_of_this_house;

    #[test]
    fn an_address_leads_to_a_page_of_the_workbench_or_nowhere() {
        for (address, is_ours) in [
            ("/kitchens/estuary", true),
            ("/formula/p%C3%A2t%C3%A9", true),
            ("//elsewhere.example", false),
            ("/\\elsewhere.example", false),
            ("https://elsewhere.example", false),
            ("/a\r\nLocation: b", false),
            ("", false),
        ] {
            assert_eq!(is_of_this_house(address), is_ours, "{address:?}");
        }
    }
}
