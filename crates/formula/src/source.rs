//! The text of a file, and where its lines are. Refuses what no author can have meant.

use crate::{Checked, Diagnostic, Place, fault};
use std::sync::Arc;

/// The largest document that is read, in bytes.
pub const MOST_BYTES: u64 = 1_048_576;
/// The deepest nesting of a document.
pub const MOST_LEVELS: usize = 32;
/// The most ingredient lines, and the most steps, of one formula.
pub const MOST_LINES: usize = 10_000;
/// The most stages, and the most components, of one formula.
pub const MOST_STAGES: usize = 1_000;
/// How many faults of one file are told; beyond it, only the first of each further kind.
pub const MOST_TOLD: usize = 1000;
/// The most names that are told as known where an unknown one was read.
pub const MOST_NAMES: usize = 20;
/// The longest chain of formulas, or of ingredients, that each start from the next.
pub const LONGEST_CHAIN: usize = 32;
/// The most files of one book.
pub const MOST_FILES: usize = 100_000;

/// The text of a file.
#[derive(Clone, Debug)]
pub struct Source {
    /// The file's name in its book, with forward slashes.
    pub file: Arc<str>,
    /// Its text.
    pub text: String,
}

impl Source {
    /// Takes a file's bytes as text, or says why it is none.
    #[must_use]
    pub fn from_bytes(file: &str, bytes: Vec<u8>) -> Checked<Option<Self>> {
        let file: Arc<str> = file.into();
        if bytes.len() as u64 > MOST_BYTES {
            return Checked { value: None, diagnostics: vec![too_large(&file, bytes.len() as u64)] };
        }
        match String::from_utf8(bytes) {
            Ok(text) => Checked { value: Some(Self { file, text }), diagnostics: Vec::new() },
            Err(error) => {
                let at = error.utf8_error().valid_up_to();
                let line = 1 + error.as_bytes()[..at].iter().filter(|byte| **byte == b'\n').count();
                let message = format!("the file is not text in UTF-8: byte {at}, in line {line}, belongs to no letter");
                let place = Place { file, span: 0..0 };
                let found = fault::NOT_TEXT.at(place, message).hint("save it from your editor with the encoding UTF-8");
                Checked { value: None, diagnostics: vec![found] }
            }
        }
    }

    /// The first letter, where a fault of the whole file is marked, if marking its first byte does not cut it.
    #[must_use]
    pub fn beginning(&self) -> std::ops::Range<usize> {
        0..usize::from(self.text.as_bytes().first().is_some_and(u8::is_ascii))
    }

    /// The line and column of a byte, both counted from one; the column counts letters.
    #[must_use]
    pub fn line_and_column(&self, byte: usize) -> (usize, usize) {
        line_and_column(&self.text, byte)
    }
}

/// The line and column of a byte of a text, both counted from one; the column counts letters.
#[must_use]
pub fn line_and_column(text: &str, byte: usize) -> (usize, usize) {
    let before = &text[..text.floor_char_boundary(byte.min(text.len()))];
    let line_start = before.rfind('\n').map_or(0, |at| at + 1);
    (1 + before.matches('\n').count(), 1 + before[line_start..].chars().count())
}

/// What is said of a file over [`MOST_BYTES`], which is refused before it is read.
#[must_use]
pub fn too_large(file: &str, bytes: u64) -> Diagnostic {
    let place = Place { file: file.into(), span: 0..0 };
    let megabytes = bytes as f64 / MOST_BYTES as f64;
    fault::FILE_TOO_LARGE
        .at(place, format!("the file is {megabytes:.1} MB large; a document may be 1 MB"))
        .hint("split it into several formulas, or take out what does not belong")
}
