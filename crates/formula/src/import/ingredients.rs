//! A table of ingredients into the files of a book's own.

use super::table::{Column, Row, at_cells, rows, value};
use super::{Change, Does, Imported, is_refused};
use crate::ingredient::{Figure, plain_name};
use crate::read::keys::{INGREDIENT, Value as Kind};
use crate::read::{is_plain, read_ingredients};
use crate::source::Source;
use crate::{Checked, Diagnostic, Pantry, Place, fault};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use toml_edit::{DocumentMut, Item, Table};

/// The keys that no cell can hold.
const NOT_IN_CELLS: [&str; 4] = ["made-of", "per-100-g", "density", "piece"];

/// The columns: the name, the keys of an ingredient, its figures in 100 g, what a millilitre and a piece weigh.
fn columns() -> Vec<Column> {
    let own = |heading, kind| Column { heading, within: None, key: heading, kind, is_required: false };
    let within = |heading, table, key, kind| Column { heading, within: Some(table), key, kind, is_required: false };
    let mut all = vec![Column { is_required: true, ..own("name", Kind::Text) }];
    let keys = INGREDIENT.keys.iter().filter(|key| !NOT_IN_CELLS.contains(&key.name));
    all.extend(keys.map(|key| own(key.name, key.value)));
    let figures = Figure::ALL.iter().map(|figure| figure.name()).chain(["salt"]);
    all.extend(figures.map(|name| within(name, "per-100-g", name, Kind::Composition)));
    all.push(within("grams-per-ml", "density", "grams-per-ml", Kind::Composition));
    all.push(within("piece-weighs", "piece", "weighs", Kind::Text));
    all
}

/// Brings a table of ingredients in: a row of an own ingredient changes what its cells say, another is added to `into`.
/// An empty cell says nothing, and never nought.
#[must_use]
pub fn import_ingredients(table: &Source, own: &BTreeMap<String, Source>, into: &str, pantry: &Pantry) -> Checked<Imported> {
    let mut found = Vec::new();
    let rows = rows(table, &columns(), &mut found);
    let mut names = BTreeSet::new();
    for row in &rows {
        check(row, table, &mut names, pantry, &mut found);
    }
    let mut documents: BTreeMap<String, DocumentMut> = BTreeMap::new();
    for (file, text) in own.iter().map(|(file, source)| (file.as_str(), source.text.as_str())).chain([(into, "")]) {
        match text.parse() {
            Ok(document) => _ = documents.entry(file.to_owned()).or_insert(document),
            Err(_) => {
                let place = Place { file: file.into(), span: 0..0 };
                found.push(
                    fault::NOT_TOML.at(place, format!("{file} cannot be read")).hint("`wellproved check` says what is wrong"),
                );
            }
        }
    }
    if is_refused(&found) {
        return Checked { value: Imported::default(), diagnostics: found };
    }
    let mut imported = Imported::default();
    for row in &rows {
        let change = lay_in(&mut documents, row, into, pantry);
        if change.does != Does::Nothing {
            imported.files.insert(change.file.clone(), String::new());
        }
        imported.changes.push(change);
    }
    for (file, text) in &mut imported.files {
        *text = documents.get(file).map(ToString::to_string).unwrap_or_default();
    }
    Checked { value: imported, diagnostics: found }
}

/// The name of a row's ingredient as names are written.
fn name_of(row: &Row) -> String {
    row.get("name").map(|cell| plain_name(&cell.value)).unwrap_or_default()
}

/// Reads a row as its file would be read, and holds its name against the others.
fn check(row: &Row, table: &Source, names: &mut BTreeSet<String>, pantry: &Pantry, found: &mut Vec<Diagnostic>) {
    let name = name_of(row);
    let place = |heading: &str| {
        let span = row.get(heading).map_or_else(|| row.span.clone(), |cell| cell.span.clone());
        Place { file: Arc::clone(&table.file), span }
    };
    if !is_plain(&name) {
        let message = if name.is_empty() { "this row has no name".to_owned() } else { format!("“{name}” cannot be a name") };
        let hint = "a name is made of small letters, digits and hyphens; what readers see goes into title";
        found.push(fault::NAME_NOT_PLAIN.at(place("name"), message).hint(hint));
        return;
    }
    if !names.insert(name.clone()) {
        let message = format!("the ingredient “{name}” stands in two rows");
        found.push(fault::NAME_TWICE.at(place("name"), message).hint("keep one of them"));
    }
    let (text, cells) = row.document(&format!("[{name}]"), &name, "name");
    let read = read_ingredients(&Source { file: Arc::clone(&table.file), text: text.clone() });
    found.extend(at_cells(read.diagnostics, &text, &cells, &table.file));
    if let Some(like) = row.get("like").filter(|like| pantry.find(&like.value).is_none() && plain_name(&like.value) != name) {
        let message = format!("“{}” is no known ingredient", like.value);
        let one = fault::UNKNOWN_INGREDIENT.at(place("like"), message);
        found.push(match pantry.nearest(&like.value) {
            Some(near) => one.hint(crate::ingredient::did_you_mean(near)),
            None => one.hint("`wellproved ingredients WORD` searches the names"),
        });
    }
}

/// Lays a row in: into its own table where it has one, else as a new one.
fn lay_in(documents: &mut BTreeMap<String, DocumentMut>, row: &Row, into: &str, pantry: &Pantry) -> Change {
    let name = name_of(row);
    let file = documents.iter().find(|(_, document)| document.contains_key(&name)).map_or(into, |(file, _)| file).to_owned();
    let title = row.get("title").map(|cell| cell.value.clone());
    let title = title.or_else(|| pantry.find(&name).map(|one| one.title.clone())).unwrap_or_else(|| name.clone());
    let mut change = Change { file: file.clone(), title, does: Does::Nothing };
    let Some(document) = documents.get_mut(&file) else { return change };
    let is_new = !document.contains_key(&name);
    let table = document.entry(&name).or_insert_with(|| {
        let mut table = Table::new();
        table.decor_mut().set_prefix("\n");
        Item::Table(table)
    });
    let mut changed = Vec::new();
    // A row of a built-in name would lose all that the table knows of it, unless it starts from there.
    if is_new && row.get("like").is_none() && pantry.find(&name).is_some_and(|one| !one.own && one.name == name) {
        table["like"] = toml_edit::value(&name);
        changed.push(("like".to_owned(), None, name.clone()));
    }
    for (column, cell) in row.cells.iter().filter(|(column, _)| column.heading != "name") {
        let new: toml_edit::Value = value(column.kind, &cell.value).parse().unwrap_or_else(|_| cell.value.as_str().into());
        if let Some(change) = set(table, column, new) {
            changed.push(change);
        }
    }
    change.does = match (is_new, changed.is_empty()) {
        (true, _) => Does::Adds(changed.iter().map(|(key, _, new)| format!("{key} {new}")).collect::<Vec<_>>().join(", ")),
        (false, true) => Does::Nothing,
        (false, false) => Does::Changes(changed),
    };
    change
}

/// Sets a column's key where it says something else, and keeps what is written around it.
fn set(table: &mut Item, column: &Column, mut new: toml_edit::Value) -> Option<(String, Option<String>, String)> {
    let inner = match column.within {
        None => table,
        Some(within) => {
            let there = table.get(within).is_some_and(Item::is_table_like);
            if !there {
                table[within] = Item::Value(toml_edit::Value::InlineTable(toml_edit::InlineTable::new()));
            }
            &mut table[within]
        }
    };
    let bare = |value: &toml_edit::Value| {
        let mut value = value.clone();
        value.decor_mut().clear();
        value.as_str().map_or_else(|| value.to_string(), str::to_owned)
    };
    let was = inner.get(column.key).and_then(Item::as_value).map(bare);
    let is = bare(&new);
    let number = |text: &str| text.parse::<f64>().ok();
    let is_same_number = || was.as_deref().and_then(number).is_some_and(|was| number(&is) == Some(was));
    if was.as_ref() == Some(&is) || is_same_number() {
        return None;
    }
    if let Some(old) = inner.get(column.key).and_then(Item::as_value) {
        *new.decor_mut() = old.decor().clone();
    }
    inner[column.key] = Item::Value(new);
    Some((column.heading.to_owned(), was, is))
}
