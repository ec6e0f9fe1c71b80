//! An edition: every file of a published book.

use crate::page::{formula_page, index_page};
use formula::read::BookSettings;
use formula::Formula;
use std::collections::BTreeMap;

/// The files of a published book by name.
#[derive(Clone, Debug, Default)]
pub struct Edition {
    /// Each file's bytes.
    pub files: BTreeMap<String, Vec<u8>>,
}

/// Lays out a book as pages.
#[must_use]
pub fn edition(formulas: &[Formula], settings: &BookSettings) -> Edition {
    let mut files = BTreeMap::new();
    files.insert("index.html".to_owned(), index_page(formulas, settings).into_bytes());
    for formula in formulas {
        files.insert(format!("{}.html", formula.name), formula_page(formula, settings).into_bytes());
    }
    Edition { files }
}
