//! Which field of a form a place in its file belongs to, in the form's own words.

use super::rows::FEW;
use super::{NEW, Said, called, title};
use formula::Diagnostic;
use formula::read::keys::{Table, Value};
use std::ops::Range;
use toml_edit::{Document, Item, TableLike};

/// A field: the name under which the form sends it, and what it is called there.
#[derive(Debug)]
pub struct Field {
    pub name: String,
    pub words: String,
    /// Whether nothing stands there, though something must.
    pub is_missing: bool,
}

/// The field in which a place lies; the table of the keys may be the file's own or one of its tables.
pub fn field(fault: &Diagnostic, (keys, table): (&Table, &str), text: &str, said: &Said) -> Option<Field> {
    let document = Document::parse(text.to_owned()).ok()?;
    let root = document.as_table();
    let written: &dyn TableLike = if table.is_empty() { root } else { root.get(table)?.as_table_like()? };
    let search = Search { at: fault.place.span.start, said };
    if fault.code == formula::fault::KEY_MISSING.code {
        search.missing(keys, written, "", "")
    } else {
        search.stated(keys, written, "")
    }
}

struct Search<'s> {
    at: usize,
    said: &'s Said,
}

impl Search<'_> {
    fn holds(&self, span: Option<Range<usize>>) -> bool {
        span.is_some_and(|span| span.contains(&self.at))
    }

    /// The field whose key or value is there.
    fn stated(&self, keys: &Table, written: &dyn TableLike, path: &str) -> Option<Field> {
        keys.keys.iter().find_map(|key| {
            let (own, item) = written.get_key_value(key.name)?;
            match (key.value, item) {
                (Value::Table(inner), item) if item.is_table_like() => {
                    let found = self.stated(inner, item.as_table_like()?, &format!("{path}{}.", key.name))?;
                    Some(Field { words: format!("{}, {}", title(key), found.words.to_lowercase()), ..found })
                }
                (Value::Tables(inner), Item::ArrayOfTables(rows)) => rows.iter().enumerate().find_map(|(n, row)| {
                    let found = self.stated(inner, row, &self.row(path, key.name, n))?;
                    Some(Field {
                        words: format!("{}, {}", row_title(&title(key), inner, row, (n, rows.len())), found.words.to_lowercase()),
                        ..found
                    })
                }),
                (_, item) => {
                    let lines = item.as_table_like().into_iter().flat_map(TableLike::iter);
                    let is_within = lines.into_iter().any(|(_, line)| self.holds(line.span()));
                    let is_it = is_within || self.holds(item.span()) || self.holds(own.span());
                    is_it.then(|| Field { name: format!("{path}{}", key.name), words: title(key), is_missing: false })
                }
            }
        })
    }

    /// The field that is needed and not there, of the row whose head is there or of the table itself.
    fn missing(&self, keys: &Table, written: &dyn TableLike, path: &str, before: &str) -> Option<Field> {
        for key in keys.keys {
            let rows = written.get(key.name).and_then(Item::as_array_of_tables);
            if let (Value::Tables(inner), Some(rows)) = (key.value, rows)
                && let Some((n, row)) = rows.iter().enumerate().find(|(_, row)| self.holds(row.span()))
            {
                let words = format!("{}, ", row_title(&title(key), inner, row, (n, rows.len())));
                return self.missing(inner, row, &self.row(path, key.name, n), &words);
            }
        }
        let key = keys.keys.iter().find(|key| key.required && written.get(key.name).is_none())?;
        let words = if before.is_empty() { title(key) } else { format!("{before}{}", title(key).to_lowercase()) };
        Some(Field { name: format!("{path}{}", key.name), words, is_missing: true })
    }

    /// The path of a row as the form has it, in which those that are emptied still stand.
    fn row(&self, path: &str, key: &str, n: usize) -> String {
        let own = |n: usize| format!("{path}{key}.{n}.");
        let under =
            |path: &str| self.said.iter().filter(|(name, _)| name.starts_with(path)).map(|(_, text)| text).collect::<Vec<_>>();
        let asked = (0..).map(own).take_while(|path| !under(path).is_empty());
        let kept: Vec<String> = asked.filter(|path| under(path).iter().any(|text| !text.trim().is_empty())).collect();
        kept.get(n).cloned().unwrap_or_else(|| format!("{path}{key}.{NEW}."))
    }
}

/// What a row is called: "Pan 2 (milk pan)"; of many, which stand in the order of their names, by its name alone.
fn row_title(title: &str, keys: &Table, row: &dyn TableLike, (n, count): (usize, usize)) -> String {
    match called(keys, row) {
        Some(called) if count > FEW => format!("{title} ({called})"),
        Some(called) => format!("{title} {} ({called})", n + 1),
        None => format!("{title} {}", n + 1),
    }
}
