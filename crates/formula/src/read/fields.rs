//! Taking a table apart key by key, with a fault for each key or value that does not belong.

use super::keys::{Table, Value as Kind};
use super::{At, Quiet};
use crate::diagnostic::told_enough;
use crate::ingredient::{FigureSource, did_you_mean, nearest};
use crate::{Diagnostic, Place, fault};
use std::ops::Range;
use std::sync::Arc;
use toml::Spanned;
use toml::de::{DeTable, DeValue};
use toml::value::{Date, Datetime};

/// What reading needs to know everywhere: the file's name, and where to report.
pub struct Reader<'r> {
    /// The file being read.
    pub file: &'r Arc<str>,
    /// What is wrong so far.
    pub found: &'r mut Vec<Diagnostic>,
    /// The names of what was written but could not be read.
    pub unread: Vec<String>,
    /// What the author silenced so far.
    pub quiets: Vec<Quiet>,
}

impl Reader<'_> {
    /// A stretch of this file.
    pub fn place(&self, span: Range<usize>) -> Place {
        Place { file: Arc::clone(self.file), span }
    }

    /// Reports a fault at a stretch of this file, with what to do.
    pub fn report(&mut self, fault: &fault::Fault, span: Range<usize>, message: String, hint: impl Into<String>) {
        let place = self.place(span);
        self.keep(fault.at(place, message).hint(hint));
    }

    /// Reports a fault that has no better advice than its message.
    pub fn report_plainly(&mut self, fault: &fault::Fault, span: Range<usize>, message: String) {
        let place = self.place(span);
        self.keep(fault.at(place, message));
    }

    /// Takes note of the rules that a table silences for a stretch of the file.
    pub fn silence(&mut self, fields: &Fields, covers: &Range<usize>) {
        for (rule, reason) in fields.reasons(self, "quiet") {
            self.quiets.push(Quiet { place: self.place(rule.span), rule: rule.value, reason, covers: covers.clone() });
        }
    }

    fn keep(&mut self, one: Diagnostic) {
        if !told_enough(self.found, one.code) {
            self.found.push(one);
        }
    }

    /// Reports an unknown word with the known one that was meant, or all of them; gives the one meant.
    pub fn report_unknown<'k>(
        &mut self,
        fault: &fault::Fault,
        at: At<&str>,
        message: String,
        known: &[&'k str],
    ) -> Option<&'k str> {
        if told_enough(self.found, fault.code) {
            return None;
        }
        let place = self.place(at.span);
        let diagnostic = fault.at(place, message);
        let near = nearest(at.value, known.iter().copied());
        self.keep(match near {
            Some(near) => diagnostic.hint(did_you_mean(near)),
            None => diagnostic.hint(format!("known here: {}", known.join(", "))),
        });
        near
    }
}

/// One table of the document, its keys already compared with the known ones.
pub struct Fields<'t, 'd> {
    table: &'t DeTable<'d>,
    keys: &'static Table,
    span: Range<usize>,
}

impl<'t, 'd> Fields<'t, 'd> {
    /// Opens a table: reports unknown keys and missing required ones.
    pub fn open(reader: &mut Reader, table: &'t DeTable<'d>, span: Range<usize>, keys: &'static Table) -> Self {
        let mut meant = Vec::new();
        for key in table.keys() {
            let name = key.get_ref().as_ref();
            if keys.key(name).is_none() {
                let known: Vec<&str> = keys.keys.iter().map(|key| key.name).collect();
                let message = format!("{} has no key “{name}”", keys.title);
                meant.extend(reader.report_unknown(&fault::UNKNOWN_KEY, At::new(name, key.span()), message, &known));
                reader.unread.push(name.to_owned());
            }
        }
        for key in keys.keys.iter().filter(|key| key.required) {
            if !table.contains_key(key.name) && !meant.contains(&key.name) {
                let message = format!("{} has no “{}”", keys.title, key.name);
                reader.report(&fault::KEY_MISSING, head(&span), message, format!("{}: {}", key.name, key.meaning));
            }
        }
        Self { table, keys, span }
    }

    /// Where the table stands.
    pub fn span(&self) -> Range<usize> {
        self.span.clone()
    }

    /// Where a key's value stands, if the key is there.
    pub fn place_of(&self, name: &str) -> Option<Range<usize>> {
        self.table.get(name).map(Spanned::span)
    }

    /// The value of a key, unless it is absent or only a stand-in for unreadable text.
    fn value(&self, name: &str) -> Option<&'t Spanned<DeValue<'d>>> {
        debug_assert!(self.keys.key(name).is_some(), "{name} is not a listed key");
        let value = self.table.get(name)?;
        // The parser puts a value with an empty place where it could read none.
        (!value.span().is_empty()).then_some(value)
    }

    fn wrong_kind(&self, reader: &mut Reader, name: &str, value: &Spanned<DeValue>) {
        let wanted = self.keys.key(name).map_or(Kind::Text.describe(), |key| key.value.describe());
        let message = format!("“{name}” is {} here", describe(value.get_ref()));
        reader.report(&fault::WRONG_KIND, value.span(), message, format!("it should be {wanted}"));
        reader.unread.push(name.to_owned());
    }

    /// A text.
    pub fn text(&self, reader: &mut Reader, name: &str) -> Option<At<&'t str>> {
        let value = self.value(name)?;
        if let Some(text) = value.get_ref().as_str() {
            return Some(At::new(text, value.span()));
        }
        self.wrong_kind(reader, name, value);
        None
    }

    /// A text or a plain number, as text: `3` and `"3"` mean the same.
    pub fn figure(&self, reader: &mut Reader, name: &str) -> Option<At<String>> {
        let value = self.value(name)?;
        let figure = figure(value);
        if figure.is_none() {
            self.wrong_kind(reader, name, value);
        }
        figure
    }

    /// True or false.
    pub fn truth(&self, reader: &mut Reader, name: &str) -> Option<At<bool>> {
        let value = self.value(name)?;
        if let Some(truth) = value.get_ref().as_bool() {
            return Some(At::new(truth, value.span()));
        }
        self.wrong_kind(reader, name, value);
        None
    }

    /// A day of the calendar, as TOML writes one or in quotes.
    pub fn date(&self, reader: &mut Reader, name: &str) -> Option<At<Date>> {
        let value = self.value(name)?;
        let date = match value.get_ref() {
            DeValue::Datetime(stamp) => stamp.date,
            DeValue::String(text) => text.trim().parse::<Datetime>().ok().and_then(|stamp| stamp.date),
            _ => None,
        };
        if date.is_none() {
            let message = format!("what “{name}” states is no day of the calendar");
            reader.report(&fault::NOT_A_DATE, value.span(), message, "write the year, the month and the day: date = 2026-11-02");
        }
        Some(At::new(date?, value.span()))
    }

    /// A list of texts; a single text counts as a list of one.
    pub fn texts(&self, reader: &mut Reader, name: &str) -> Vec<At<String>> {
        let Some(value) = self.value(name) else { return Vec::new() };
        if let Some(text) = value.get_ref().as_str() {
            return vec![At::new(text.to_owned(), value.span())];
        }
        let Some(items) = value.get_ref().as_array() else {
            self.wrong_kind(reader, name, value);
            return Vec::new();
        };
        let mut texts = Vec::new();
        for item in items.iter() {
            match item.get_ref().as_str() {
                Some(text) => texts.push(At::new(text.to_owned(), item.span())),
                None => self.wrong_kind(reader, name, item),
            }
        }
        texts
    }

    /// A table of names, each with a reason.
    pub fn reasons(&self, reader: &mut Reader, name: &str) -> Vec<(At<String>, String)> {
        let Some((table, _)) = self.table(reader, name) else { return Vec::new() };
        let mut reasons = Vec::new();
        for (rule, value) in in_written_order(table) {
            match value.get_ref().as_str() {
                Some(reason) => reasons.push((At::new(rule.value.to_owned(), rule.span), reason.trim().to_owned())),
                None => reader.report(
                    &fault::WRONG_KIND,
                    value.span(),
                    format!("the reason for silencing “{}” is {}", rule.value, describe(value.get_ref())),
                    "say why in a text in quotes",
                ),
            }
        }
        reasons
    }

    /// Where figures come from: a text, or a table with dataset, id and name.
    pub fn source(&self, reader: &mut Reader, name: &str) -> Option<FigureSource> {
        let value = self.value(name)?;
        if let Some(text) = value.get_ref().as_str() {
            return Some(FigureSource { dataset: None, id: None, name: text.to_owned() });
        }
        let Some(table) = value.get_ref().as_table() else {
            self.wrong_kind(reader, name, value);
            return None;
        };
        let word = |key: &str| table.get(key).and_then(|value| value.get_ref().as_str()).map(str::to_owned);
        Some(FigureSource { dataset: word("dataset"), id: word("id"), name: word("name").unwrap_or_default() })
    }

    /// A table within this one.
    pub fn table(&self, reader: &mut Reader, name: &str) -> Option<(&'t DeTable<'d>, Range<usize>)> {
        let value = self.value(name)?;
        if let Some(table) = value.get_ref().as_table() {
            return Some((table, value.span()));
        }
        self.wrong_kind(reader, name, value);
        None
    }

    /// A table under a key that may also be a plain figure; none if it is not there, or no table.
    pub fn table_if_one(&self, name: &str) -> Option<&'t DeTable<'d>> {
        self.value(name)?.get_ref().as_table()
    }

    /// A list of tables, as `[[name]]` makes them.
    pub fn tables(&self, reader: &mut Reader, name: &str) -> Vec<(&'t DeTable<'d>, Range<usize>)> {
        let Some(value) = self.value(name) else { return Vec::new() };
        let Some(items) = value.get_ref().as_array() else {
            self.wrong_kind(reader, name, value);
            return Vec::new();
        };
        let mut tables = Vec::new();
        for item in items.iter() {
            match item.get_ref().as_table() {
                Some(table) => tables.push((table, item.span())),
                None => self.wrong_kind(reader, name, item),
            }
        }
        tables
    }
}

/// A text or a plain number, as text.
pub fn figure(value: &Spanned<DeValue>) -> Option<At<String>> {
    let text = match value.get_ref() {
        DeValue::String(text) => text.to_string(),
        DeValue::Integer(number) => number.to_string(),
        DeValue::Float(number) => number.to_string(),
        _ => return None,
    };
    Some(At::new(text, value.span()))
}

/// The entries of a table in the order in which they were written.
pub fn in_written_order<'t, 'd>(table: &'t DeTable<'d>) -> Vec<(At<&'t str>, &'t Spanned<DeValue<'d>>)> {
    let mut entries: Vec<_> = table.iter().map(|(key, value)| (At::new(key.get_ref().as_ref(), key.span()), value)).collect();
    entries.sort_by_key(|(key, _)| key.span.start);
    entries
}

/// The first stretch of a table, enough to mark it without painting it all.
fn head(span: &Range<usize>) -> Range<usize> {
    span.start..span.end.min(span.start + 1).max(span.start)
}

fn describe(value: &DeValue) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) | DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}
