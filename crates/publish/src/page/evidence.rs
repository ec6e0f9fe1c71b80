//! The evidence sheet of a tasting: the conclusion, the figures behind it, and what it does not say.

use super::Shell;
use crate::site::page_name;
use crate::tasting::{Report, Table, chart, held, tables, told};
use crate::tongue::Tongue;
use formula::read::BookSettings;
use maud::{Markup, html};

/// The style of a tasting's drawings, in the page's own ink.
const STYLE: &str = include_str!("evidence.css");

/// The file of a tasting's evidence sheet; no formula's page can be called so.
#[must_use]
pub fn evidence_name(tasting: &str) -> String {
    format!("{tasting}.evidence.html")
}

/// A formula whose page claims something of a tasting.
#[derive(Debug)]
pub struct Cited {
    /// Its name.
    pub name: String,
    /// Its title.
    pub title: String,
    /// What was changed in it since it was tasted.
    pub changed: Option<String>,
}

/// The evidence sheet of a tasting, with the formulas whose pages claim it.
#[must_use]
pub fn evidence_page(report: &Report, cited_by: &[Cited], settings: &BookSettings) -> String {
    let (tasting, told) = (report.tasting, told(report));
    let is_of_a_book = !cited_by.is_empty();
    let file = evidence_name(&tasting.name);
    let tongue = Tongue::of(&settings.language);
    // What was found is worded in English, and marked so where the book is not.
    let english = (!tongue.is_english()).then_some("en");
    let body = html! {
        @if is_of_a_book {
            header.top { nav aria-label=(tongue.book()) { a href="index.html" { @if settings.title.is_empty() { (tongue.formulas()) } @else { (settings.title) } } } }
        }
        main {
            article.evidence {
                h1 { (tasting.title) }
                div lang=[english] {
                    p.conclusion { (told.conclusion) }
                    @for words in held(report) { p { (words) } }
                    @for drawing in chart(report) { figure.tasting { (drawing) } }
                    @for table in tables(report) { (drawn(&table)) }
                    (chapter("Grounds", &told.grounds))
                    (chapter("What it does not say", &told.limits))
                }
                @if is_of_a_book {
                    p { span lang=[english] { "Cited by " } @for (n, one) in cited_by.iter().enumerate() { @if n > 0 { ", " } a href=(page_name(&one.name)) { (one.title) } } "." }
                    @for one in cited_by { @if let Some(changed) = &one.changed { p lang=[english] { (one.title) ": " (changed) } } }
                }
                p.fine lang=[english] { "Exact tests wherever the panel could be counted out. The method and its limits: ISO 4120, 10399, 5495 and 8587." }
            }
        }
    };
    let name = if is_of_a_book { file.as_str() } else { "" };
    let shell = Shell { style: STYLE, ..Shell::plain(&tasting.title, &told.conclusion, settings, name) };
    shell.wrap(body)
}

fn chapter(title: &str, lines: &[String]) -> Markup {
    html! { @if !lines.is_empty() { h2 { (title) } ul { @for line in lines { li { (line) } } } } }
}

/// A table of so many columns with words in them is stacked on a telephone: each row a block, each cell with its heading.
const STACKED: usize = 5;

fn drawn(table: &Table) -> Markup {
    let is_stacked = table.head.len() == STACKED;
    // A table that is laid out as blocks is still told as a table.
    let role = |role: &'static str| is_stacked.then_some(role);
    let head = |n: usize| is_stacked.then(|| table.head.get(n).map_or("", String::as_str));
    html! {
        div.scroll tabindex="0" role="region" aria-label=(table.caption) {
            table.stacked[is_stacked] role=[role("table")] {
                caption { (table.caption) }
                thead role=[role("rowgroup")] { tr role=[role("row")] { @for (n, head) in table.head.iter().enumerate() { th.number[n > 0] scope="col" role=[role("columnheader")] { (head) } } } }
                tbody role=[role("rowgroup")] {
                    @for row in &table.rows {
                        tr role=[role("row")] {
                            @for (n, cell) in row.iter().enumerate() {
                                @if n == 0 { th scope="row" role=[role("rowheader")] { (cell) } }
                                @else { td.number role=[role("cell")] data-head=[head(n)] { (cell) } }
                            }
                        }
                    }
                }
            }
        }
    }
}
