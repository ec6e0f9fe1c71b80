//! What a baker has there already.

use super::amount::measure;
use super::fields::{Fields, Reader, figure, in_written_order};
use super::{At, keys, toml_text};
use crate::source::Source;
use crate::{Checked, fault};
use quantity::{Kind, Measure};
use std::sync::Arc;
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use toml::value::Date;

/// What is there, as it was counted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Larder {
    /// The file it stands in.
    pub file: Arc<str>,
    /// On which day it was counted.
    pub on: Option<Date>,
    /// How much of which ingredient: a weight, a volume or a count.
    pub holds: Vec<(At<String>, At<Measure>)>,
}

/// Reads `larder.toml`. What it calls by name is bound by the book.
#[must_use]
pub fn read_larder(source: &Source) -> Checked<Larder> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    let mut larder = Larder { file: Arc::clone(&source.file), ..Larder::default() };
    if found.iter().any(|found| found.code == fault::NESTED_TOO_DEEP.code) {
        return Checked { value: larder, diagnostics: found };
    }
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let reader = &mut reader;
    let fields = Fields::open(reader, &table, source.beginning(), &keys::LARDER);
    larder.on = fields.date(reader, "on").map(|date| date.value);
    if let Some((table, _)) = fields.table(reader, "holds") {
        larder.holds = holds(reader, table);
    }
    Checked { value: larder, diagnostics: found }
}

fn holds(reader: &mut Reader, table: &DeTable) -> Vec<(At<String>, At<Measure>)> {
    let mut held = Vec::new();
    for (name, value) in in_written_order(table) {
        held.extend(amount(reader, name.value, value).map(|one| (At::new(name.value.to_owned(), name.span), one)));
    }
    held
}

fn amount(reader: &mut Reader, name: &str, value: &Spanned<DeValue>) -> Option<At<Measure>> {
    let Some(text) = figure(value) else {
        let message = format!("what is there of “{name}” is no amount");
        reader.report(&fault::WRONG_KIND, value.span(), message, format!("write {name} = \"850 g\", or the number of pieces"));
        return None;
    };
    let read = measure(reader, &At::new(&text.value, text.span.clone()), &[Kind::Mass, Kind::Volume, Kind::Count])?;
    Some(At::new(read, text.span))
}
