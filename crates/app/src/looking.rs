//! Looks on while an author writes: what a book's folder holds, and when it has changed and come to rest.
//!
//! Asking the disk four times a second works alike on every system and on folders of other machines, and asking
//! about a thousand files takes milliseconds.

use crate::press::stamp;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// How often the disk is asked.
const PAUSE: Duration = Duration::from_millis(250);
/// No more files are looked at than that, nor folders within folders deeper than DEPTH.
const MOST_FILES: usize = 50_000;
const DEPTH: usize = 12;

/// Every file of a folder with its size and time of change.
pub type Seen = BTreeMap<PathBuf, String>;

/// What lies in a book's folder, or in the folder of the book that a formula's file lies in. Hidden files and the
/// pages' own folder do not count.
pub fn at(book: &Path, out: &Path) -> Seen {
    let folder = if book.is_dir() { book.to_owned() } else { crate::files::book_around(book).unwrap_or_else(|| book.to_owned()) };
    let mut seen = Seen::new();
    look(&folder, std::fs::canonicalize(out).ok().as_deref(), DEPTH, &mut seen);
    seen
}

/// Waits until something is other than it was seen, and stays so for the length of a pause.
pub fn until_changed(book: &Path, out: &Path, seen: &Seen) {
    let mut last = at(book, out);
    loop {
        std::thread::sleep(PAUSE);
        let now = at(book, out);
        if now != *seen && now == last {
            return;
        }
        last = now;
    }
}

fn look(path: &Path, out: Option<&Path>, depth: usize, seen: &mut Seen) {
    if seen.len() >= MOST_FILES || depth == 0 || (out.is_some() && std::fs::canonicalize(path).ok().as_deref() == out) {
        return;
    }
    let Ok(entries) = std::fs::read_dir(path) else {
        seen.insert(path.to_owned(), stamp(Some(path)));
        return;
    };
    for entry in entries.flatten() {
        if entry.file_name().to_string_lossy().starts_with('.') {
            continue;
        }
        // A link to a folder is not followed, as when a book is read.
        match entry.file_type() {
            Ok(kind) if kind.is_dir() => look(&entry.path(), out, depth - 1, seen),
            _ => drop(seen.insert(entry.path(), stamp(Some(&entry.path())))),
        }
    }
}
