//! The book as an Atom feed (RFC 4287): one entry a formula, the newest first.

use super::address::{page_address, page_name};
use super::card::Dated;
use crate::edition::XML_HEAD;
use crate::page::xml_text;
use formula::read::BookSettings;
use maud::{Markup, PreEscaped, html};

/// The most entries that a feed carries; the index lists all.
const MOST: usize = 100;

/// The feed of a book; none where the book states no address, because a feed is read far from its folder.
#[must_use]
pub fn feed(formulas: &[Dated], settings: &BookSettings) -> Option<String> {
    let home = page_address(settings, "index.html")?;
    let own = page_address(settings, "feed.xml")?;
    let mut newest: Vec<&Dated> = formulas.iter().collect();
    newest.sort_by(|a, b| (&b.updated, &a.card.name).cmp(&(&a.updated, &b.card.name)));
    let updated = newest.first().map_or("1970-01-01T00:00:00Z", |one| one.updated.as_str());
    let author = settings.author.as_deref().unwrap_or(&settings.title);
    let markup = html! {
        feed xmlns="http://www.w3.org/2005/Atom" xml:lang=(settings.language) {
            id { (home) }
            title { (text(&settings.title)) }
            updated { (updated) }
            author { name { (text(author)) } }
            link rel="self" type="application/atom+xml" href=(own) {}
            link rel="alternate" type="text/html" href=(home) {}
            generator { "Wellproved" }
            @for one in newest.into_iter().take(MOST) { (entry(one, settings)) }
        }
    };
    Some(format!("{XML_HEAD}{}\n", markup.into_string()))
}

fn entry(one: &Dated, settings: &BookSettings) -> Markup {
    let address = page_address(settings, &page_name(&one.card.name)).unwrap_or_default();
    html! {
        entry xml:lang=[one.card.language.as_deref()] {
            id { (address) }
            title { (text(&one.card.title)) }
            published { (one.published) }
            updated { (one.updated) }
            link rel="alternate" type="text/html" href=(address) {}
            @if !one.card.lead.is_empty() { summary { (text(&one.card.lead)) } }
            @for tag in &one.card.tags { category term=(xml_text(tag)) {} }
        }
    }
}

fn text(words: &str) -> PreEscaped<String> {
    let plain = xml_text(words);
    html! { (plain) }
}
