//! The book's lists: its formulas by tag and by ingredient, base formulas with those that use them.

use super::{Shell, style};
use crate::site::{Card, Links, page_name};
use crate::tongue::Tongue;
use formula::ingredient::plain_name;
use formula::read::BookSettings;
use maud::{Markup, html};
use std::collections::BTreeMap;

/// The book's own pages.
pub const LISTS: [&str; 3] = ["index.html", "tags.html", "ingredients.html"];

/// An entry of a list: what it is called, where it leads itself, and the formulas under it.
struct Entry<'c> {
    title: &'c str,
    page: Option<String>,
    cards: Vec<&'c Card>,
}

/// The formulas of a book by tag.
#[must_use]
pub fn tags_page(cards: &[&Card], settings: &BookSettings) -> String {
    let mut entries: BTreeMap<String, Entry> = BTreeMap::new();
    for card in cards {
        for tag in &card.tags {
            let entry = entries.entry(tag_id(tag)).or_insert_with(|| Entry { title: tag, page: None, cards: Vec::new() });
            if entry.cards.last().is_none_or(|last| last.name != card.name) {
                entry.cards.push(card);
            }
        }
    }
    let tongue = Tongue::of(&settings.language);
    list_page("tags.html", tongue.formulas_by_tag(), tongue.no_tag_yet(), &entries, settings)
}

/// The formulas of a book by ingredient; a formula that goes into others is an ingredient of theirs.
#[must_use]
pub fn ingredients_page(cards: &[&Card], settings: &BookSettings) -> String {
    let mut entries: BTreeMap<String, Entry> = BTreeMap::new();
    for card in cards {
        for used in &card.ingredients {
            let entry = || Entry { title: &used.title, page: None, cards: Vec::new() };
            entries.entry(ingredient_id(&used.name)).or_insert_with(entry).cards.push(card);
        }
    }
    let links = Links::of(cards.iter().copied());
    for base in cards {
        let users = links.used_in(&base.name);
        if !users.is_empty() {
            let cards = cards.iter().filter(|card| users.iter().any(|user| user.name == card.name)).copied().collect();
            entries
                .insert(format!("formula-{}", base.name), Entry { title: &base.title, page: Some(page_name(&base.name)), cards });
        }
    }
    let tongue = Tongue::of(&settings.language);
    list_page("ingredients.html", tongue.formulas_by_ingredient(), tongue.no_ingredient_yet(), &entries, settings)
}

fn list_page(file: &str, title: &str, none: &str, entries: &BTreeMap<String, Entry>, settings: &BookSettings) -> String {
    let tongue = Tongue::of(&settings.language);
    let mut in_order: Vec<(&String, &Entry)> = entries.iter().collect();
    in_order.sort_by_key(|(id, entry)| (tongue.in_order(entry.title), *id));
    let whole = if settings.title.is_empty() { title.to_owned() } else { format!("{title} · {}", settings.title) };
    let body = html! {
        header.top { nav aria-label=(tongue.book()) { a href="index.html" { @if settings.title.is_empty() { (tongue.formulas()) } @else { (settings.title) } } } }
        main {
            h1 { (title) }
            (to_lists(file, tongue))
            @if in_order.is_empty() { p { (none) } }
            div.lists {
                @for (id, entry) in in_order {
                    section aria-labelledby=(id) {
                        h2 id=(id) { @if let Some(page) = &entry.page { a href=(page) { (entry.title) } } @else { (entry.title) } }
                        ul.plain { @for card in &entry.cards { li lang=[card.language.as_deref()] { a href=(page_name(&card.name)) { (card.title) } } } }
                    }
                }
            }
        }
    };
    Shell { style: style::LISTS.as_str(), ..Shell::plain(&whole, &whole, settings, file) }.wrap(body)
}

/// The way to the other lists.
pub fn to_lists(here: &str, tongue: Tongue) -> Markup {
    let titles = [tongue.all_formulas(), tongue.by_tag(), tongue.by_ingredient()];
    html! {
        nav.lists aria-label=(tongue.lists()) {
            @for (file, words) in LISTS.into_iter().zip(titles) {
                a href=(file) aria-current=[(file == here).then_some("page")] { (words) } " "
            }
        }
    }
}

/// A formula's tags, each leading to the others that have it.
pub fn tag_links(tags: &[String]) -> Markup {
    html! {
        @for (n, tag) in tags.iter().enumerate() {
            @if n > 0 { ", " }
            a.tag rel="tag" href={ "tags.html#" (tag_id(tag)) } { bdi { (tag) } }
        }
    }
}

/// Where a tag stands in the list; what sounds alike stands together.
fn tag_id(tag: &str) -> String {
    format!("tag-{}", letters_of(&plain_name(tag)))
}

/// Where an ingredient stands in the list.
pub fn ingredient_id(name: &str) -> String {
    format!("ingredient-{}", letters_of(name))
}

/// A text as part of an address: letters and figures as they are, all else by its number.
fn letters_of(text: &str) -> String {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    text.chars().map(|c| if plain(c) { c.to_string() } else { format!("_{:x}", u32::from(c)) }).collect()
}
