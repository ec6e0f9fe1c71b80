//! Forms made of the list of keys: a table of a book's file as fields, and what is typed there written back in place,
//! with comments, order and everything untouched kept.

mod checked;
mod fields;
mod figures;
mod lines;
mod place;
mod rows;
mod told;
mod writing;

pub use checked::Target;
pub use fields::Sheet;
pub use writing::Writer;

use crate::book::Opened;
use crate::workbench::answer::Refusal;
use crate::workbench::hand::Reach;
use formula::read::keys::{Key, Table, Value};
use maud::{Markup, html};
use serde::Deserialize;
use std::collections::BTreeMap;
use toml_edit::{DocumentMut, Item, TableLike};

/// What a form says, by the paths of its fields.
pub type Said = BTreeMap<String, String>;

/// The number under which a row that is not there yet is asked for.
const NEW: &str = "new";

/// Whether a key's value is a table of the author's own names, written a line each.
const fn is_lines(value: Value) -> bool {
    matches!(value, Value::Shares | Value::Composition | Value::Temperatures | Value::Amounts)
}

/// The ingredients that a field offers while one types.
pub fn wares(opened: &Opened) -> Markup {
    html! { datalist #ingredients { @for one in opened.book.pantry.all() { option value=(one.name) { (one.title) } } } }
}

/// The button that writes a form, always within reach, and what was written last where that was just now.
pub fn writing() -> Markup {
    html! { p.writing { button { "Write it" } } }
}

/// What was just written, after the form was sent.
pub fn written(asked: &Written, reach: &Reach) -> Markup {
    html! { @if !asked.written.is_empty() && let Some(last) = &reach.back { p role="status" { "Written: " (last) "." } } }
}

/// The text of the file that whoever sends a form saw.
fn from(said: &Said) -> Result<&str, Refusal> {
    said.get("from").map(String::as_str).ok_or_else(|| Refusal::unfit("That is no form of this page.", "load the page again"))
}

/// What a file of the book says, empty where there is none, and the same as a document.
pub fn document(opened: &Opened, file: &str) -> Result<(String, DocumentMut), Refusal> {
    let text = opened.text.files.get(file).map(|source| source.text.clone()).unwrap_or_default();
    let how = "mend it in an editor first: its line is told beside the formulas";
    let document = text.parse().map_err(|_| Refusal::conflict(format!("{file} cannot be read."), how))?;
    Ok((text, document))
}

/// Whether a page is shown after its form was written.
#[derive(Default, Deserialize)]
#[serde(default)]
pub struct Written {
    written: String,
}

/// What stands under a key, as it is typed; none where it stands there in a way that no field shows.
fn typed(item: Option<&Item>, value: Value) -> Option<String> {
    let Some(item) = item else { return Some(String::new()) };
    if is_lines(value) {
        return item.as_table_like().map(lines);
    }
    // Sizes are a number, or a table of them.
    if let (Value::Sizes, Some(table)) = (value, item.as_table_like()) {
        return Some(lines(table));
    }
    if let Some(array) = item.as_array() {
        let texts: Option<Vec<&str>> = array.iter().map(toml_edit::Value::as_str).collect();
        return texts.map(|texts| texts.join(", "));
    }
    plain(item)
}

/// A text, number or day without its quotes.
fn plain(item: &Item) -> Option<String> {
    let value = item.as_value()?;
    match value {
        toml_edit::Value::String(text) => Some(text.value().clone()),
        toml_edit::Value::Integer(number) => Some(number.value().to_string()),
        toml_edit::Value::Float(number) => Some(number.value().to_string()),
        toml_edit::Value::Boolean(truth) => Some(truth.value().to_string()),
        toml_edit::Value::Datetime(day) => Some(day.value().to_string()),
        _ => None,
    }
}

/// A table of names as lines: "flour-rye-dark = 50 %".
fn lines(table: &dyn TableLike) -> String {
    let line = |(key, item): (&str, &Item)| format!("{key} = {}", plain(item).unwrap_or_default());
    table.iter().map(line).collect::<Vec<_>>().join("\n")
}

/// What a row is called or about, where its first key says so.
fn called(keys: &Table, row: &dyn TableLike) -> Option<String> {
    let first = keys.keys.first().filter(|key| matches!(key.value, Value::Text))?;
    typed(row.get(first.name), first.value).filter(|text| !text.is_empty())
}

/// The key as a person says it.
fn title(key: &Key) -> String {
    quantity::print::capital(&key.name.replace('-', " "))
}

/// What could stand there, out of the words that describe it.
fn example(value: Value) -> &'static str {
    match value {
        Value::Figure(words) => words.split('"').nth(1).unwrap_or_default(),
        Value::Shares => "flour-rye-dark = 50 %",
        Value::Composition => "protein = 12.5",
        Value::Temperatures => "water = 14 °C",
        Value::Date => "2026-11-25",
        Value::Amounts => "milk-whole = 1/2 l",
        Value::Sizes => "6, or by what they hold: 3 l = 2",
        _ => "",
    }
}
