//! An edition: the book's own pages, made from what is told of each formula.

use crate::page::{LISTS, MARK, index_page, ingredients_page, tags_page};
use crate::site::{Card, Dated, feed, sitemap};
use formula::read::BookSettings;
use std::collections::BTreeMap;

/// What the XML files of an edition begin with, so that they are known from others that lie in the same folder.
pub const XML_HEAD: &str = "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<!-- Made by Wellproved. -->\n";

/// Whether a file is one that an edition wrote.
#[must_use]
pub fn is_own(bytes: &[u8]) -> bool {
    let head = String::from_utf8_lossy(&bytes[..bytes.len().min(1000)]);
    head.starts_with(XML_HEAD) || head.contains(MARK)
}

/// The files of a published book that are no formula's page, by name; `sheets` are its evidence sheets.
#[must_use]
pub fn book_files<'s>(
    formulas: &[Dated],
    sheets: impl IntoIterator<Item = &'s str>,
    settings: &BookSettings,
) -> BTreeMap<&'static str, String> {
    let cards: Vec<&Card> = formulas.iter().map(|one| &one.card).collect();
    let lists: Vec<&str> = LISTS.into_iter().chain(sheets).collect();
    let mut files = BTreeMap::from([
        ("index.html", index_page(&cards, settings)),
        ("tags.html", tags_page(&cards, settings)),
        ("ingredients.html", ingredients_page(&cards, settings)),
    ]);
    files.extend(feed(formulas, settings).map(|feed| ("feed.xml", feed)));
    files.extend(sitemap(formulas, &lists, settings).map(|map| ("sitemap.xml", map)));
    files
}
