//! What is typed in a form, written back into the table it was made of. What says the same as before is not touched.

use super::told::Told;
use super::{NEW, Said, figures, is_lines, typed};
use crate::book::Opened;
use crate::workbench::answer::Refusal;
use formula::read::keys::{Key, Table, Value};
use jiff::ZonedDateTime;
use toml_edit::{Array, ArrayOfTables, InlineTable, Item, Table as Written, TableLike, value};

/// Writes what a form says, and keeps account of it.
pub struct Writer<'w> {
    pub(super) opened: &'w Opened,
    pub(super) said: &'w Said,
    pub(super) told: Told,
}

impl<'w> Writer<'w> {
    /// Of what a form says about a file of a book.
    pub fn of(opened: &'w Opened, said: &'w Said) -> Self {
        Self { opened, said, told: Told::default() }
    }

    /// What was changed, after what it is called: "prices changed: milk-whole 1.39 EUR".
    pub fn told(&self, what: &str) -> String {
        self.told.after(what)
    }

    /// Writes it into a table; `is_outer` where it is the file's own.
    ///
    /// # Errors
    /// Where a line of a field cannot be understood; what was written until then is to be given up.
    pub fn write(&mut self, keys: &Table, written: &mut dyn TableLike, path: &str, is_outer: bool) -> Result<(), Refusal> {
        for key in keys.keys {
            match key.value {
                Value::Table(inner) => self.write_table(key, inner, written, path, is_outer)?,
                Value::Tables(inner) => self.write_tables(key, inner, written, path)?,
                _ => self.write_key(key, written, path)?,
            }
        }
        Ok(())
    }

    fn write_key(&mut self, key: &Key, written: &mut dyn TableLike, path: &str) -> Result<(), Refusal> {
        let field = format!("{path}{}", key.name);
        let Some(text) = self.said.get(&field) else { return Ok(()) };
        let text = text.replace("\r\n", "\n").trim().to_owned();
        if typed(written.get(key.name), key.value).is_none_or(|before| before.trim() == text) {
            return Ok(());
        }
        if text.is_empty() {
            written.remove(key.name);
            self.told.gone(key.name);
            return Ok(());
        }
        if is_lines(key.value) || (matches!(key.value, Value::Sizes) && text.contains('=')) {
            return self.write_lines(key, written, &field, &text);
        }
        let fresh = match key.value {
            Value::Texts => value(Array::from_iter(text.split(',').map(str::trim).filter(|text| !text.is_empty()))),
            Value::Truth => value(text == "true"),
            Value::Figure(words) if figures::is_money(words) => value(figures::money(&text, self.opened)),
            Value::Figure(_) | Value::Sizes => figures::figure(&text),
            Value::Date => figures::day(&text),
            _ => value(&text),
        };
        put(written, key.name, fresh);
        self.told.came(key, &typed(written.get(key.name), key.value).unwrap_or(text));
        Ok(())
    }

    /// Whether a form says anything under a path.
    fn says(&self, path: &str) -> bool {
        self.under(path).any(|(_, text)| !text.trim().is_empty())
    }

    /// Whether a form says anything of a row that is not there yet: the day in it is only offered.
    fn says_of_a_new_one(&self, keys: &Table, path: &str) -> bool {
        let is_day = |field: &str| keys.key(&field[path.len()..]).is_some_and(|key| matches!(key.value, Value::Date));
        self.under(path).any(|(field, text)| !text.trim().is_empty() && !is_day(field))
    }

    fn under<'p>(&'p self, path: &'p str) -> impl Iterator<Item = (&'p String, &'p String)> {
        self.said.range(path.to_owned()..).take_while(move |(key, _)| key.starts_with(path))
    }

    fn write_table(
        &mut self,
        key: &Key,
        keys: &Table,
        written: &mut dyn TableLike,
        path: &str,
        is_outer: bool,
    ) -> Result<(), Refusal> {
        let inner = format!("{path}{}.", key.name);
        if written.get(key.name).is_none() {
            if !self.says(&inner) {
                return Ok(());
            }
            let fresh = if is_outer { Item::Table(Written::new()) } else { value(InlineTable::new()) };
            written.insert(key.name, fresh);
        }
        let Some(table) = written.get_mut(key.name).and_then(Item::as_table_like_mut) else { return Ok(()) };
        let was_empty = table.is_empty();
        self.told.within(key.name);
        self.write(keys, table, &inner, false)?;
        self.told.outside();
        if table.is_empty() && !was_empty {
            written.remove(key.name);
        }
        Ok(())
    }

    fn write_tables(&mut self, key: &Key, keys: &Table, written: &mut dyn TableLike, path: &str) -> Result<(), Refusal> {
        let of = |n: &str| format!("{path}{}.{n}.", key.name);
        if let Some(rows) = written.get_mut(key.name).and_then(Item::as_array_of_tables_mut) {
            for n in (0..rows.len()).rev() {
                let own = of(&n.to_string());
                let Some(row) = rows.get_mut(n).filter(|_| self.under(&own).next().is_some()) else { continue };
                let called = super::called(keys, row).unwrap_or_else(|| format!("{} {}", key.name, n + 1));
                if self.says(&own) {
                    self.told.within(&called);
                    self.write(keys, row, &own, false)?;
                    self.told.outside();
                } else {
                    rows.remove(n);
                    self.told.gone(&called);
                }
            }
        }
        let new = of(NEW);
        if !self.says_of_a_new_one(keys, &new) {
            return Ok(());
        }
        let mut row = Written::new();
        let called = keys.keys.first().and_then(|first| self.said.get(&format!("{new}{}", first.name)));
        self.told.within(called.map_or(key.name, |called| called.trim()));
        self.write(keys, &mut row, &new, false)?;
        self.told.outside();
        for day in keys.keys.iter().filter(|key| matches!(key.value, Value::Date)) {
            if !row.contains_key(day.name) {
                row.insert(day.name, figures::day(&ZonedDateTime::now().date().to_string()));
            }
        }
        match written.get_mut(key.name) {
            None => {
                let mut rows = ArrayOfTables::new();
                rows.push(row);
                written.insert(key.name, Item::ArrayOfTables(rows));
            }
            Some(item) => item.as_array_of_tables_mut().into_iter().for_each(|rows| rows.push(row.clone())),
        }
        Ok(())
    }
}

/// Puts a value under a key; the comment beside it stays.
pub(super) fn put(written: &mut dyn TableLike, key: &str, mut fresh: Item) {
    let before = written.get(key).and_then(Item::as_value).map(|before| before.decor().clone());
    if let (Some(decor), Some(fresh)) = (before, fresh.as_value_mut()) {
        *fresh.decor_mut() = decor;
    }
    match written.get_mut(key) {
        Some(item) => *item = fresh,
        None => _ = written.insert(key, fresh),
    }
}
