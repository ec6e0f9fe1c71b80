//! The site map (sitemaps.org, protocol 0.9): every page of the book with the day it last changed.

use super::address::{page_address, page_name};
use super::card::Dated;
use crate::edition::XML_HEAD;
use formula::read::BookSettings;
use maud::html;

/// The most addresses that one file may carry, by the protocol.
const MOST: usize = 50_000;

/// The site map of a book; none where the book states no address. `lists` are the book's own pages.
#[must_use]
pub fn sitemap(formulas: &[Dated], lists: &[&str], settings: &BookSettings) -> Option<String> {
    settings.address.as_ref()?;
    let newest = formulas.iter().map(|one| one.updated.as_str()).max();
    let lists = lists.iter().map(|file| ((*file).to_owned(), newest));
    let pages = formulas.iter().map(|one| (page_name(&one.card.name), Some(one.updated.as_str())));
    let markup = html! {
        urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9" {
            @for (file, changed) in lists.chain(pages).take(MOST) {
                url {
                    loc { (page_address(settings, &file).unwrap_or_default()) }
                    @if let Some(changed) = changed { lastmod { (changed) } }
                }
            }
        }
    };
    Some(format!("{XML_HEAD}{}\n", markup.into_string()))
}
