//! What is typed in a form, written back into the table it was made of. What says the same as before is not touched.

use super::{NEW, is_lines, typed};
use formula::read::keys::{Key, Table, Value};
use std::collections::{BTreeMap, BTreeSet};
use toml_edit::{Array, ArrayOfTables, InlineTable, Item, Table as Written, TableLike, value};

/// What a form says, by the paths of its fields.
pub type Said = BTreeMap<String, String>;

/// Writes what a form says into a table; `is_outer` where it is the file's own.
pub fn write(keys: &Table, written: &mut dyn TableLike, path: &str, said: &Said, is_outer: bool) {
    for key in keys.keys {
        match key.value {
            Value::Table(inner) => write_table(key, inner, written, path, said, is_outer),
            Value::Tables(inner) => write_tables(key, inner, written, path, said),
            _ => write_key(key, written, path, said),
        }
    }
}

fn write_key(key: &Key, written: &mut dyn TableLike, path: &str, said: &Said) {
    let Some(text) = said.get(&format!("{path}{}", key.name)) else { return };
    let text = text.replace("\r\n", "\n").trim().to_owned();
    if typed(written.get(key.name), key.value).is_none_or(|before| before.trim() == text) {
        return;
    }
    if text.is_empty() {
        written.remove(key.name);
    } else if is_lines(key.value) || (matches!(key.value, Value::Sizes) && text.contains('=')) {
        write_lines(key, written, &text);
    } else {
        let fresh = match key.value {
            Value::Texts => value(Array::from_iter(text.split(',').map(str::trim).filter(|text| !text.is_empty()))),
            Value::Truth => value(text == "true"),
            Value::Figure(_) | Value::Sizes => figure(&text),
            Value::Date => day(&text),
            _ if written.get(key.name).is_some_and(Item::is_datetime) => day(&text),
            _ => value(text),
        };
        put(written, key.name, fresh);
    }
}

/// A number as a number, everything else as a text.
fn figure(text: &str) -> Item {
    let number = text.replace(',', ".");
    match (text.parse::<i64>(), number.parse::<f64>()) {
        (Ok(whole), _) => value(whole),
        (_, Ok(number)) if number.is_finite() => value(number),
        _ => value(text),
    }
}

/// A day as a day, everything else as a text, which is refused where a day is meant.
fn day(text: &str) -> Item {
    text.parse::<toml_edit::Datetime>().map_or_else(|_| value(text), value)
}

/// Puts a value under a key; the comment beside it stays.
fn put(written: &mut dyn TableLike, key: &str, mut fresh: Item) {
    let before = written.get(key).and_then(Item::as_value).map(|before| before.decor().clone());
    if let (Some(decor), Some(fresh)) = (before, fresh.as_value_mut()) {
        *fresh.decor_mut() = decor;
    }
    match written.get_mut(key) {
        Some(item) => *item = fresh,
        None => _ = written.insert(key, fresh),
    }
}

/// Lines of names and figures: those that are gone are taken out, those that say something else are changed.
fn write_lines(key: &Key, written: &mut dyn TableLike, text: &str) {
    if written.get(key.name).and_then(Item::as_table_like).is_none() {
        put(written, key.name, value(InlineTable::new()));
    }
    let Some(table) = written.get_mut(key.name).and_then(Item::as_table_like_mut) else { return };
    let pairs = text.lines().filter(|line| !line.trim().is_empty());
    let pairs: Vec<(String, &str)> = pairs
        .map(|line| line.split_once(['=', ':']).unwrap_or((line, "")))
        .map(|(name, figure)| (name.trim().trim_matches('"').to_owned(), figure.trim().trim_matches('"')))
        .collect();
    let kept: BTreeSet<&str> = pairs.iter().map(|(name, _)| name.as_str()).collect();
    let gone: Vec<String> = table.iter().map(|(name, _)| name.to_owned()).filter(|name| !kept.contains(name.as_str())).collect();
    gone.iter().for_each(|name| drop(table.remove(name)));
    for (name, text) in &pairs {
        if table.get(name).and_then(super::plain).as_deref() != Some(*text) {
            put(table, name, figure(text));
        }
    }
}

/// Whether a form says anything under a path.
fn says(said: &Said, path: &str) -> bool {
    said.range(path.to_owned()..).take_while(|(key, _)| key.starts_with(path)).any(|(_, text)| !text.trim().is_empty())
}

fn write_table(key: &Key, keys: &Table, written: &mut dyn TableLike, path: &str, said: &Said, is_outer: bool) {
    let inner = format!("{path}{}.", key.name);
    if written.get(key.name).is_none() {
        if !says(said, &inner) {
            return;
        }
        let fresh = if is_outer { Item::Table(Written::new()) } else { value(InlineTable::new()) };
        written.insert(key.name, fresh);
    }
    let Some(table) = written.get_mut(key.name).and_then(Item::as_table_like_mut) else { return };
    let was_empty = table.is_empty();
    write(keys, table, &inner, said, false);
    if table.is_empty() && !was_empty {
        written.remove(key.name);
    }
}

fn write_tables(key: &Key, keys: &Table, written: &mut dyn TableLike, path: &str, said: &Said) {
    let of = |n: &str| format!("{path}{}.{n}.", key.name);
    if let Some(rows) = written.get_mut(key.name).and_then(Item::as_array_of_tables_mut) {
        let asked = |n: usize| said.keys().any(|field| field.starts_with(&of(&n.to_string())));
        for n in (0..rows.len()).rev().filter(|n| asked(*n)).collect::<Vec<_>>() {
            let own = of(&n.to_string());
            if !says(said, &own) {
                rows.remove(n);
            } else if let Some(row) = rows.get_mut(n) {
                write(keys, row, &own, said, false);
            }
        }
    }
    let new = of(NEW);
    if !says(said, &new) {
        return;
    }
    let mut row = Written::new();
    write(keys, &mut row, &new, said, false);
    match written.get_mut(key.name) {
        None => {
            let mut rows = ArrayOfTables::new();
            rows.push(row);
            written.insert(key.name, Item::ArrayOfTables(rows));
        }
        Some(item) => item.as_array_of_tables_mut().into_iter().for_each(|rows| rows.push(row.clone())),
    }
}
