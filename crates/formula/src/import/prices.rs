//! A table of prices into `prices.toml`.

use super::table::{Column, Row, at_cells, rows};
use super::{Change, Does, Imported, is_refused};
use crate::ingredient::did_you_mean;
use crate::prices::PRICES;
use crate::read::keys::Value as Kind;
use crate::read::{Pack, read_prices};
use crate::source::Source;
use crate::{Checked, Diagnostic, Ingredient, Pantry, Place, fault};
use std::sync::Arc;
use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, value};

const fn column(heading: &'static str, kind: Kind, is_required: bool) -> Column {
    Column { heading, within: None, key: heading, kind, is_required }
}

/// The columns: the keys of a price.
const COLUMNS: [Column; 6] = [
    column("of", Kind::Text, true),
    column("pack", Kind::Text, true),
    column("costs", Kind::Text, true),
    column("on", Kind::Date, false),
    column("from", Kind::Text, false),
    column("edible", Kind::Text, false),
];

/// Brings a table of prices in: an ingredient's price of another day is added, one of the same day and place is changed.
/// Bare amounts are in the book's currency.
#[must_use]
pub fn import_prices(table: &Source, prices: Option<&Source>, pantry: &Pantry, currency: Option<&str>) -> Checked<Imported> {
    let mut found = Vec::new();
    let mut packs = Vec::new();
    for mut row in rows(table, &COLUMNS, &mut found) {
        complete(&mut row, currency);
        if let Some((pack, ingredient)) = read(&row, pantry, currency, &table.file, &mut found) {
            let same = |(other, named, _): &(Pack, Arc<Ingredient>, _)| is_same(other, &pack) && named.name == ingredient.name;
            if packs.iter().any(same) {
                let message = format!("“{}” has two prices of that day and place", pack.of.value);
                found.push(fault::NAME_TWICE.at(row_place(&row, table), message).hint("keep one of the rows"));
            }
            packs.push((pack, ingredient, row));
        }
    }
    let nothing = Checked { value: Imported::default(), diagnostics: Vec::new() };
    if is_refused(&found) {
        return Checked { diagnostics: found, ..nothing };
    }
    let text = prices.map_or("", |source| source.text.as_str());
    let Ok(mut document) = text.parse::<DocumentMut>() else {
        let place = Place { file: PRICES.into(), span: 0..0 };
        found.push(fault::NOT_TOML.at(place, format!("{PRICES} cannot be read")).hint("`wellproved check` says what is wrong"));
        return Checked { diagnostics: found, ..nothing };
    };
    let there = prices.map(|source| read_prices(source).value.packs).unwrap_or_default();
    let list = document.entry("price").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    let Some(list) = list.as_array_of_tables_mut() else {
        let place = Place { file: PRICES.into(), span: 0..0 };
        let message = format!("the prices of {PRICES} stand in one line");
        found.push(fault::WRONG_KIND.at(place, message).hint("begin each of them with [[price]]"));
        return Checked { diagnostics: found, ..nothing };
    };
    let changes: Vec<Change> = packs.iter().map(|(pack, ingredient, row)| lay_in(list, &there, pack, ingredient, row)).collect();
    let is_changed = changes.iter().any(|change| change.does != Does::Nothing);
    let files = is_changed.then(|| (PRICES.to_owned(), document.to_string())).into_iter().collect();
    Checked { value: Imported { files, changes }, diagnostics: found }
}

/// A bare amount is in the book's currency.
fn complete(row: &mut Row, currency: Option<&str>) {
    for (column, cell) in &mut row.cells {
        let is_bare = cell.value.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
        if let Some(currency) = currency.filter(|_| column.heading == "costs" && is_bare) {
            cell.value = format!("{} {currency}", cell.value);
        }
    }
}

/// A row as a price, read as its file would be.
fn read(
    row: &Row,
    pantry: &Pantry,
    currency: Option<&str>,
    file: &Arc<str>,
    found: &mut Vec<Diagnostic>,
) -> Option<(Pack, Arc<Ingredient>)> {
    let (text, cells) = row.document("[[price]]", "price", "");
    let read = read_prices(&Source { file: Arc::clone(file), text: text.clone() });
    found.extend(at_cells(read.diagnostics, &text, &cells, file));
    let pack = read.value.packs.into_iter().next()?;
    let place = |heading: &str| Place { file: Arc::clone(file), span: row.get(heading).map_or(0..0, |cell| cell.span.clone()) };
    if let Some(own) = currency.filter(|own| *own != pack.costs.currency) {
        let message = format!("“{}” cannot be added to prices in {own}", pack.costs);
        found.push(fault::TWO_CURRENCIES.at(place("costs"), message).hint("state every price in the book's currency"));
    }
    let Some(ingredient) = pantry.find(&pack.of.value) else {
        let message = format!("there is no ingredient called “{}”", pack.of.value);
        let one = fault::UNKNOWN_INGREDIENT.at(place("of"), message);
        found.push(match pantry.nearest(&pack.of.value) {
            Some(near) => one.hint(did_you_mean(near)),
            None => one.hint("`wellproved ingredients WORD` searches the names"),
        });
        return None;
    };
    Some((pack, Arc::clone(ingredient)))
}

fn row_place(row: &Row, table: &Source) -> Place {
    Place { file: Arc::clone(&table.file), span: row.span.clone() }
}

/// Whether two prices are of the same day and place.
fn is_same(one: &Pack, other: &Pack) -> bool {
    one.on == other.on && one.from == other.from
}

/// Lays a price into the list: changes the one of its day and place, or adds it.
fn lay_in(list: &mut ArrayOfTables, there: &[Pack], pack: &Pack, ingredient: &Ingredient, row: &Row) -> Change {
    let is_it = |old: &Pack| {
        (old.of.value == ingredient.name || ingredient.also.contains(&old.of.value) || old.of.value == pack.of.value)
            && is_same(old, pack)
    };
    let title = ingredient.called.clone();
    let change = |does| Change { file: PRICES.to_owned(), title: title.clone(), does };
    let old = there.iter().position(is_it).filter(|_| there.len() <= list.len());
    if let Some((old, table)) = old.and_then(|at| Some((&there[at], list.get_mut(at)?))) {
        let mut changed = Vec::new();
        let mut put = |key: &str, was: Option<String>, is: Option<String>| {
            let Some(is) = is.filter(|is| was.as_ref() != Some(is)) else { return };
            if let Some(cell) = row.get(key) {
                set(table, key, &cell.value);
                changed.push((key.to_owned(), was, is));
            }
        };
        put("pack", Some(old.pack.value.to_string()), Some(pack.pack.value.to_string()));
        put("costs", Some(old.costs.to_string()), Some(pack.costs.to_string()));
        let share = |share: quantity::Fraction| quantity::print::percent(share, 1);
        put("edible", old.edible.map(share), pack.edible.map(share));
        return change(if changed.is_empty() { Does::Nothing } else { Does::Changes(changed) });
    }
    let mut table = Table::new();
    table["of"] = value(&ingredient.name);
    for (column, cell) in row.cells.iter().filter(|(column, _)| column.heading != "of") {
        set(&mut table, column.heading, &cell.value);
    }
    // A blank line before it, as authors part their prices.
    table.decor_mut().set_prefix("\n");
    list.push(table);
    let on = pack.on.map(|on| format!(" on {on}")).unwrap_or_default();
    change(Does::Adds(format!("{} for {}{on}", pack.pack.value, pack.costs)))
}

/// Sets a key and keeps what is written around its value; a day is written as TOML writes one.
fn set(table: &mut Table, key: &str, text: &str) {
    let day = (key == "on").then(|| text.trim().parse::<toml_edit::Datetime>().ok()).flatten();
    let mut new = day.map_or_else(|| toml_edit::Value::from(text), toml_edit::Value::from);
    if let Some(old) = table.get(key).and_then(Item::as_value) {
        *new.decor_mut() = old.decor().clone();
    }
    table[key] = Item::Value(new);
}
