//! The book's index: every formula with what it makes and how long it takes, and a field to find one by.

use super::lists::{tag_links, to_lists};
use super::{Scripted, Shell, style};
use crate::reader;
use crate::site::{Card, page_name};
use crate::tongue::Tongue;
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
    let tongue = Tongue::of(&settings.language);
    let title = if settings.title.is_empty() { tongue.formulas() } else { &settings.title };
    let body = html! {
        main {
            header.head {
                h1 { (title) }
                @if let Some(author) = &settings.author { p.byline { (author) } }
                (to_lists("index.html", tongue))
            }
            form.finding role="search" hidden {
                label for="words" { (tongue.find_by()) }
                input #words type="search" autocomplete="off" spellcheck="false" enterkeyhint="search";
                p.fine #found role="status" data-found=(tongue.found("{found}", "{all}")) {}
            }
            ul.index { @for card in cards { (item(card, tongue)) } }
        }
    };
    let description = format!("{title}: {}", tongue.formulas_counted(cards.len() as f64, cards.len().to_string()));
    let end = html! { script type="module" { (PreEscaped(FINDING)) } };
    let scripted = Scripted { policy: POLICY.as_str(), style: "", end };
    Shell { scripted: Some(scripted), style: style::LISTS.as_str(), ..Shell::plain(title, &description, settings, "index.html") }
        .wrap(body)
}

/// A formula in the list; the ingredients are there for the finding alone.
fn item(card: &Card, tongue: Tongue) -> Markup {
    let ingredients: Vec<&str> = card.ingredients.iter().map(|one| one.title.as_str()).collect();
    html! {
        li data-words=(ingredients.join(" ")) {
            h2 lang=[card.language.as_deref()] { a href=(page_name(&card.name)) { (card.title) } }
            @if !card.lead.is_empty() { p lang=[card.language.as_deref()] { (card.lead) } }
            p.facts {
                (facts(card, tongue).join(" · "))
                @if !card.tags.is_empty() { " · " (tag_links(&card.tags)) }
            }
        }
    }
}

fn facts(card: &Card, tongue: Tongue) -> Vec<String> {
    let mut facts = vec![card.makes.clone()];
    facts.extend(card.time.as_ref().map(|time| tongue.so_long_to_table(time)));
    facts.retain(|fact| !fact.is_empty());
    facts
}
