//! An edition: the book's own pages, made from what is told of each formula.

use crate::page::{LISTS, index_page, ingredients_page, tags_page};
use crate::site::{Card, Dated, feed, sitemap};
use formula::read::BookSettings;
use std::collections::BTreeMap;

/// The files of a published book that are no formula's page, by name.
#[must_use]
pub fn book_files(formulas: &[Dated], settings: &BookSettings) -> BTreeMap<&'static str, String> {
    let cards: Vec<&Card> = formulas.iter().map(|one| &one.card).collect();
    let lists: Vec<&str> = LISTS.iter().map(|(file, _)| *file).collect();
    let mut files = BTreeMap::from([
        ("index.html", index_page(&cards, settings)),
        ("tags.html", tags_page(&cards, settings)),
        ("ingredients.html", ingredients_page(&cards, settings)),
    ]);
    files.extend(feed(formulas, settings).map(|feed| ("feed.xml", feed)));
    files.extend(sitemap(formulas, &lists, settings).map(|map| ("sitemap.xml", map)));
    files
}
