//! An edition: every file of a published book.

use crate::page::{formula_page, index_page};
use crate::reader::Reader;
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use formula::Formula;
use formula::read::BookSettings;
use std::collections::BTreeMap;

/// The files of a published book by name.
#[derive(Clone, Debug, Default)]
pub struct Edition {
    /// Each file's bytes.
    pub files: BTreeMap<String, Vec<u8>>,
}

/// Lays out a book as pages. `pictures` are the photographs' bytes by their path in the book, `readers` what lets the
/// readers of a formula's page fit it to their kitchens, by the formula's name.
#[must_use]
pub fn edition(
    formulas: &[Formula],
    settings: &BookSettings,
    pictures: &BTreeMap<String, Vec<u8>>,
    readers: &BTreeMap<String, Reader>,
) -> Edition {
    let mut files = BTreeMap::new();
    files.insert("index.html".to_owned(), index_page(formulas, settings).into_bytes());
    for formula in formulas {
        let picture = formula.head.photograph.as_ref().and_then(|photograph| picture(&photograph.file, pictures));
        files.insert(
            format!("{}.html", formula.name),
            formula_page(formula, settings, picture.as_deref(), readers.get(&formula.name)).into_bytes(),
        );
    }
    Edition { files }
}

/// A picture as an address that holds it whole, so that the page stays one file.
fn picture(file: &str, pictures: &BTreeMap<String, Vec<u8>>) -> Option<String> {
    let bytes = pictures.get(file)?;
    Some(format!("data:{};base64,{}", picture_type(file)?, BASE64.encode(bytes)))
}

/// The media type of a picture by its ending; none for what a page cannot show.
#[must_use]
pub fn picture_type(file: &str) -> Option<&'static str> {
    match file.rsplit('.').next()?.to_lowercase().as_str() {
        "jpg" | "jpeg" => Some("image/jpeg"),
        "png" => Some("image/png"),
        "webp" => Some("image/webp"),
        "avif" => Some("image/avif"),
        "gif" => Some("image/gif"),
        _ => None,
    }
}
