//! TOML text into a table with places, with every syntax fault found.

use crate::diagnostic::told_enough;
use crate::source::MOST_LEVELS;
use crate::{fault, Diagnostic, Place};
use std::ops::Range;
use std::sync::Arc;
use toml::de::DeTable;

/// Parses a text; what could be read is read, what could not is reported.
pub fn parse<'t>(file: &Arc<str>, text: &'t str, found: &mut Vec<Diagnostic>) -> DeTable<'t> {
    if let Some(span) = too_deep(text) {
        let place = Place { file: Arc::clone(file), span };
        let message = format!("the document is nested more than {MOST_LEVELS} levels deep here");
        found.push(fault::NESTED_TOO_DEEP.at(place, message).hint("a formula needs five levels; close the brackets that were left open"));
        return DeTable::new();
    }
    let (table, errors) = DeTable::parse_recoverable(text);
    for error in errors {
        if told_enough(found, fault::NOT_TOML.code) {
            break;
        }
        let place = Place { file: Arc::clone(file), span: visible(text, error.span().unwrap_or(0..0)) };
        found.push(fault::NOT_TOML.at(place, format!("this is not TOML: {}", error.message())).hint(advice(error.message())));
    }
    table.into_inner()
}

fn advice(message: &str) -> &'static str {
    if message.contains("duplicate") {
        return "each key may stand once in its table: rename one, or take one out";
    }
    "text stands in quotes, as in title = \"Rye tin loaf\"; figures with a unit too, as in water = \"68 %\""
}

/// Marks at least one letter, so that the place can be drawn.
fn visible(text: &str, span: Range<usize>) -> Range<usize> {
    let start = text.floor_char_boundary(span.start.min(text.len()));
    let end = text.ceil_char_boundary(span.end.clamp(start, text.len()));
    start..end
}

/// The first bracket, or dot of a key, outside strings and comments that opens a level too many.
fn too_deep(text: &str) -> Option<Range<usize>> {
    let mut depth: usize = 0;
    let mut dots: usize = 0;
    let mut bytes = text.bytes().enumerate();
    while let Some((at, byte)) = bytes.next() {
        match byte {
            b'.' => dots += 1,
            b'=' | b',' | b'\n' | b'[' | b'{' => dots = 0,
            _ => {}
        }
        match byte {
            b'[' | b'{' => depth += 1,
            b']' | b'}' => depth = depth.saturating_sub(1),
            b'#' => while bytes.next().is_some_and(|(_, b)| b != b'\n') {},
            b'"' | b'\'' => skip_string(text, at, byte, &mut bytes),
            _ => {}
        }
        let names = if dots > 0 { dots + 1 } else { 0 };
        if depth + names > MOST_LEVELS {
            return Some(at..at + 1);
        }
    }
    None
}

/// Passes over a string of one or of three quotes that begins at a byte.
fn skip_string(text: &str, at: usize, quote: u8, bytes: &mut impl Iterator<Item = (usize, u8)>) {
    let triple = [quote, quote, quote];
    let long = text.as_bytes()[at..].starts_with(&triple);
    if long {
        bytes.next();
        bytes.next();
    }
    while let Some((here, byte)) = bytes.next() {
        match byte {
            b'\\' if quote == b'"' => {
                bytes.next();
            }
            b'\n' if !long => return,
            b if b == quote && !long => return,
            b if b == quote && text.as_bytes()[here..].starts_with(&triple) => {
                bytes.next();
                bytes.next();
                return;
            }
            _ => {}
        }
    }
}
