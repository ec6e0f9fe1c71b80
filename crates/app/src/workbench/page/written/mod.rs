//! Forms made of the list of keys: a table of a book's file as fields, and what is typed there written back in place,
//! with comments, order and everything untouched kept.

mod fields;
mod writing;

pub use fields::fields;
pub use writing::write;

use formula::read::keys::Value;
use toml_edit::{Item, TableLike};

/// The number under which a row that is not there yet is asked for.
const NEW: &str = "new";

/// Whether a key's value is a table of the author's own names, written a line each.
const fn is_lines(value: Value) -> bool {
    matches!(value, Value::Shares | Value::Composition | Value::Temperatures | Value::Amounts)
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
