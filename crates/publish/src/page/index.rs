//! The book's index: every formula with what it makes and how long it takes, and a field to find one by.

use super::lists::{tag_links, to_lists};
use super::{Scripted, Shell};
use crate::reader;
use crate::site::{Card, page_name};
use formula::read::BookSettings;
use maud::{Markup, PreEscaped, html};
use std::sync::LazyLock;

/// Finds formulas by words; without it the list is simply whole.
const FINDING: &str = include_str!("finding.js");

/// What the index may do.
static POLICY: LazyLock<String> = LazyLock::new(|| reader::policy(FINDING));

/// The index of a book.
#[must_use]
pub fn index_page(cards: &[&Card], settings: &BookSettings) -> String {
    let title = if settings.title.is_empty() { "Formulas" } else { &settings.title };
    let body = html! {
        main {
            header.head {
                h1 { (title) }
                @if let Some(author) = &settings.author { p.byline { (author) } }
                (to_lists("index.html"))
            }
            form.finding role="search" hidden {
                label for="words" { "Find by title, tag or ingredient" }
                input #words type="search" autocomplete="off" spellcheck="false" enterkeyhint="search";
                p.fine #found role="status" {}
            }
            ul.index { @for card in cards { (item(card)) } }
        }
    };
    let description = format!("{title}: {}", counted(cards.len()));
    let end = html! { script type="module" { (PreEscaped(FINDING)) } };
    let scripted = Scripted { policy: POLICY.as_str(), style: "", end };
    Shell { scripted: Some(scripted), ..Shell::plain(title, &description, settings, "index.html") }.wrap(body)
}

fn counted(formulas: usize) -> String {
    if formulas == 1 { "1 formula".to_owned() } else { format!("{formulas} formulas") }
}

/// A formula in the list; the ingredients are there for the finding alone.
fn item(card: &Card) -> Markup {
    let ingredients: Vec<&str> = card.ingredients.iter().map(|one| one.title.as_str()).collect();
    html! {
        li data-words=(ingredients.join(" ")) {
            h2 { a href=(page_name(&card.name)) { (card.title) } }
            @if !card.lead.is_empty() { p { (card.lead) } }
            p.facts {
                (facts(card).join(" · "))
                @if !card.tags.is_empty() { " · " (tag_links(&card.tags)) }
            }
        }
    }
}

fn facts(card: &Card) -> Vec<String> {
    let mut facts = vec![card.makes.clone()];
    facts.extend(card.time.as_ref().map(|time| format!("{time} from start to table")));
    facts.retain(|fact| !fact.is_empty());
    facts
}
