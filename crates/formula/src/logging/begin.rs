//! A new trial's text.

use toml_edit::{DocumentMut, value};

/// What is known when a trial is begun.
#[derive(Clone, Debug, Default)]
pub struct Beginning<'b> {
    /// What it is called.
    pub title: &'b str,
    /// The formula's name.
    pub formula: &'b str,
    /// The text of the formula that is baked: its SHA-256.
    pub revision: &'b str,
    /// The kitchen, where it is not the book's own.
    pub kitchen: Option<&'b str>,
    /// The day: "2026-11-21".
    pub date: &'b str,
}

/// The text of a trial of which nothing was seen yet.
#[must_use]
pub fn begin(beginning: &Beginning) -> String {
    let mut document = DocumentMut::new();
    document["title"] = value(beginning.title);
    document["formula"] = value(beginning.formula);
    document["revision"] = value(beginning.revision);
    if let Some(kitchen) = beginning.kitchen {
        document["kitchen"] = value(kitchen);
    }
    let day = beginning.date.parse::<toml_edit::Datetime>();
    document["date"] = day.map_or_else(|_| value(beginning.date), value);
    document.to_string()
}
