//! A list of tables as rows: what they mean is told once, where another is added; many are folded, each in a line.

use super::fields::Told;
use super::{NEW, Sheet, called, title, typed};
use formula::read::keys::{Key, Table, Value};
use jiff::ZonedDateTime;
use maud::{Markup, html};
use toml_edit::{ArrayOfTables, Item, Table as Written, value};

/// More rows than this are folded, each in a line of its own, in the order of what they are about.
pub(super) const FEW: usize = 6;

impl Sheet<'_> {
    pub(super) fn rows(&self, key: &Key, keys: &Table, written: &dyn toml_edit::TableLike, path: &str) -> Markup {
        let item = written.get(key.name);
        let rows = item.and_then(Item::as_array_of_tables);
        let count = rows.map_or(0, ArrayOfTables::len);
        let title = title(key);
        if item.is_some() && rows.is_none() {
            return html! { p.fine { (title) " stands in the file in a way that is changed in an editor." } };
        }
        let own = format!("{path}{}.", key.name);
        html! {
            details.part open[count > 0 || self.has_typed(&own)] {
                summary { (title) span.fine { ": " (key.meaning) } }
                @if count > FEW { (self.another(&title, keys, &own)) }
                @if count > 0 { p.fine.on-screen { "A row whose fields are all emptied is taken out." } }
                @if let Some(rows) = rows {
                    @if count > FEW { (self.folded(&title, keys, rows, &own)) } @else { (self.open(&title, keys, rows, &own)) }
                }
                @if count <= FEW { (self.another(&title, keys, &own)) }
            }
        }
    }

    /// The row that is not there yet; a day in it is today's.
    fn another(&self, title: &str, keys: &Table, own: &str) -> Markup {
        let mut new = Written::new();
        for day in keys.keys.iter().filter(|key| matches!(key.value, Value::Date)) {
            new.insert(day.name, value(ZonedDateTime::now().date().to_string()));
        }
        html! { fieldset.another { legend { (title) ": another" } (self.fields(keys, &new, &format!("{own}{NEW}."))) } }
    }

    fn open(&self, title: &str, keys: &Table, rows: &ArrayOfTables, own: &str) -> Markup {
        html! { @for (n, row) in rows.iter().enumerate() {
            fieldset.row {
                legend { (title) " " (n + 1) @if let Some(called) = called(keys, row) { ": " (called) } }
                (self.all(keys, row, &format!("{own}{n}."), Told::Briefly))
            }
        } }
    }

    fn folded(&self, title: &str, keys: &Table, rows: &ArrayOfTables, own: &str) -> Markup {
        let mut all: Vec<(usize, String, String, &Written)> =
            rows.iter().enumerate().map(|(n, row)| (n, self.about(keys, row), rest(keys, row), row)).collect();
        all.sort_by_cached_key(|(n, about, _, row)| (about.to_lowercase(), typed(row.get("on"), Value::Date), *n));
        html! {
            label.sieve hidden { "Only rows with " input type="search" data-sieve autocomplete="off"; }
            @for (n, about, rest, row) in all {
                @let path = format!("{own}{n}.");
                details.row open[self.differs(keys, row, &path)] {
                    summary { b { (about) } @if !rest.is_empty() { " " span.fine { (rest) } } }
                    fieldset { legend.apart { (title) ": " (about) " " (rest) } (self.all(keys, row, &path, Told::Briefly)) }
                }
            }
        }
    }

    /// Whether something else was typed of a row than is written.
    fn differs(&self, keys: &Table, row: &Written, path: &str) -> bool {
        let differs = |key: &Key| {
            self.typed(&format!("{path}{}", key.name))
                .is_some_and(|said| typed(row.get(key.name), key.value).is_some_and(|before| before.trim() != said.trim()))
        };
        keys.keys.iter().any(differs)
    }

    /// What a row is about: an ingredient's title, or its first field.
    fn about(&self, keys: &Table, row: &Written) -> String {
        let name = called(keys, row).unwrap_or_default();
        self.opened.book.pantry.find(&name).map_or_else(|| name.clone(), |ware| ware.title.clone())
    }
}

/// What else a row says, in a line.
fn rest(keys: &Table, row: &Written) -> String {
    let said = keys.keys.iter().skip(1).filter_map(|key| typed(row.get(key.name), key.value));
    said.filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" · ")
}
