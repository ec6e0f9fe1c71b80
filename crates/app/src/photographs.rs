//! Photographs on the disk: inside the book, of a kind that pages show, and not too large.

use formula::read::Photograph;
use formula::{Diagnostic, fault};
use std::fs;
use std::path::{Path, PathBuf};

/// The largest picture that is laid into a page.
const MOST_BYTES: u64 = 4 * 1_048_576;

/// What keeps a photograph from being shown, if anything does.
pub fn judge(book: &Path, photograph: &Photograph) -> Option<Diagnostic> {
    let (message, hint) = usable(book, photograph).err()?;
    Some(fault::PHOTOGRAPH_NOT_USABLE.at(photograph.place.clone(), message).hint(hint))
}

/// A photograph's bytes, if it can be shown.
pub fn read(book: &Path, photograph: &Photograph) -> Option<Vec<u8>> {
    fs::read(usable(book, photograph).ok()?).ok()
}

/// The file of a photograph, or why it cannot be used and what to do.
fn usable(book: &Path, photograph: &Photograph) -> Result<PathBuf, (String, &'static str)> {
    let file = &photograph.file;
    if publish::picture_type(file).is_none() {
        return Err((format!("“{file}” is no picture that a page can show"), "save it as JPEG, PNG, WebP, AVIF or GIF"));
    }
    let missing =
        || (format!("the picture “{file}” is not in the book's folder"), "put it there, or write its path within the book");
    let book = fs::canonicalize(book).map_err(|_| missing())?;
    let path = fs::canonicalize(book.join(file)).map_err(|_| missing())?;
    if !path.starts_with(&book) || !path.is_file() {
        return Err(missing());
    }
    let size = fs::metadata(&path).map_err(|_| missing())?.len();
    if size > MOST_BYTES {
        let megabytes = size as f64 / 1_048_576.0;
        return Err((
            format!("the picture “{file}” is {megabytes:.1} MB large; a page takes up to 4 MB"),
            "save it smaller: 2000 dots across are plenty",
        ));
    }
    Ok(path)
}
