//! Photographs on the disk: inside the book, of a kind that pages show, whole, and not too large.

use formula::read::Photograph;
use formula::{Diagnostic, fault};
use publish::picture::{Developed, develop};
use std::fs;
use std::path::{Path, PathBuf};

/// The largest file that is read as a picture.
const MOST_BYTES: u64 = 32 * 1_048_576;

/// What keeps a photograph from being shown, if anything does.
pub fn judge(book: &Path, photograph: &Photograph) -> Option<Diagnostic> {
    let (message, hint) = developed(book, photograph).err()?;
    Some(fault::PHOTOGRAPH_NOT_USABLE.at(photograph.place.clone(), message).hint(hint))
}

/// A photograph read whole, if it can be shown.
pub fn read(book: &Path, photograph: &Photograph) -> Option<Developed> {
    developed(book, photograph).ok()
}

fn developed(book: &Path, photograph: &Photograph) -> Result<Developed, (String, &'static str)> {
    let path = usable(book, photograph)?;
    let file = &photograph.file;
    let bytes = fs::read(path).map_err(|_| missing(file))?;
    develop(&bytes).map_err(|reason| (format!("the picture “{file}” {reason}"), "save it once more as JPEG, 2000 dots across"))
}

fn missing(file: &str) -> (String, &'static str) {
    (format!("the picture “{file}” is not in the book's folder"), "put it there, or write its path within the book")
}

/// The file of a photograph, or why it cannot be used and what to do.
fn usable(book: &Path, photograph: &Photograph) -> Result<PathBuf, (String, &'static str)> {
    let file = &photograph.file;
    let book = fs::canonicalize(book).map_err(|_| missing(file))?;
    let path = fs::canonicalize(book.join(file)).map_err(|_| missing(file))?;
    if !path.starts_with(&book) || !path.is_file() {
        return Err(missing(file));
    }
    let size = fs::metadata(&path).map_err(|_| missing(file))?.len();
    if size > MOST_BYTES {
        let megabytes = size as f64 / 1_048_576.0;
        let most = MOST_BYTES / 1_048_576;
        return Err((
            format!("the picture “{file}” is {megabytes:.1} MB large; at most {most} MB are read"),
            "save it smaller: 2000 dots across are plenty",
        ));
    }
    Ok(path)
}
