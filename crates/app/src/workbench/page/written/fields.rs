//! A table of keys as fields.

use super::{Said, example, is_lines, title, typed};
use crate::book::Opened;
use formula::read::keys::{Key, Table, Value};
use maud::{Markup, html};
use toml_edit::TableLike;

/// A form of a book's file: what is typed already stands before what is written.
pub struct Sheet<'s> {
    pub(super) opened: &'s Opened,
    typed: &'s Said,
}

/// How a field stands among others.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Told {
    /// With what it means.
    InFull,
    /// By its title alone: what it means is told once for all rows.
    Briefly,
}

impl<'s> Sheet<'s> {
    /// Of what is written in a book, and of what somebody typed, if anything.
    pub const fn of(opened: &'s Opened, typed: &'s Said) -> Self {
        Self { opened, typed }
    }

    /// The fields of a table, each named by its path: "oven.fan", "pan.0.across".
    pub fn fields(&self, keys: &Table, written: &dyn TableLike, path: &str) -> Markup {
        self.all(keys, written, path, Told::InFull)
    }

    pub(super) fn all(&self, keys: &Table, written: &dyn TableLike, path: &str, told: Told) -> Markup {
        let (plain, tables): (Vec<&Key>, Vec<&Key>) =
            keys.keys.iter().partition(|key| !matches!(key.value, Value::Table(_) | Value::Tables(_)));
        html! {
            div.written { @for key in plain { (self.field(key, written, path, told)) } }
            @for key in tables { @match key.value {
                Value::Table(inner) => (self.table(key, inner, written, path)),
                Value::Tables(inner) => (self.rows(key, inner, written, path)),
                _ => {},
            } }
        }
    }

    fn table(&self, key: &Key, keys: &Table, written: &dyn TableLike, path: &str) -> Markup {
        let none = toml_edit::Table::new();
        let item = written.get(key.name);
        let inner = item.and_then(toml_edit::Item::as_table_like);
        let own = format!("{path}{}.", key.name);
        html! {
            @if item.is_none() || inner.is_some() {
                details.part open[inner.is_some() || self.has_typed(&own)] {
                    summary { (title(key)) span.fine { ": " (key.meaning) } }
                    (self.fields(keys, inner.unwrap_or(&none), &own))
                }
            }
        }
    }

    /// What was typed in a field, if the form was sent.
    pub(super) fn typed(&self, name: &str) -> Option<&String> {
        self.typed.get(name)
    }

    /// Whether anything was typed under a path.
    pub(super) fn has_typed(&self, path: &str) -> bool {
        self.typed.iter().any(|(name, text)| name.starts_with(path) && !text.trim().is_empty())
    }

    fn field(&self, key: &Key, written: &dyn TableLike, path: &str, told: Told) -> Markup {
        // What silences rules is written beside them, in the text.
        if matches!(key.value, Value::Reasons | Value::Lines(_)) {
            return html! {};
        }
        let title = title(key);
        let name = format!("{path}{}", key.name);
        let Some(value) = typed(written.get(key.name), key.value) else {
            return html! { p.fine { (title) " stands in the file in a way that is changed in an editor." } };
        };
        let value = self.typed(&name).cloned().unwrap_or(value);
        let meaning = format!("meaning-{}", name.replace('.', "-"));
        let field = Field { name: &name, title: &title, meaning: (told == Told::InFull).then_some(&meaning), value: &value };
        let control = match key.value {
            Value::Word(words) => field.choice(&words.iter().map(|word| (*word, *word)).collect::<Vec<_>>()),
            Value::Truth => field.choice(&[("true", "yes"), ("false", "no")]),
            _ if key.name == "kitchen" => field.choice(&self.kitchens(&value)),
            Value::Date if value.is_empty() || value.parse::<jiff::civil::Date>().is_ok() => field.day(),
            lines if is_lines(lines) || matches!(lines, Value::Sizes) => field.lines(example(key.value)),
            _ => field.line(key),
        };
        html! { label { b { (title) } " " @if told == Told::InFull { span.fine id=(meaning) { (key.meaning) @if key.required { ", needed" } } } (control) } }
    }

    /// The book's kitchens, and what is written even if it is none of them.
    fn kitchens<'k>(&'k self, value: &'k str) -> Vec<(&'k str, &'k str)> {
        let known = &self.opened.book.kitchens;
        let other = (!value.is_empty() && !known.contains_key(value)).then_some((value, value));
        known.iter().map(|(name, kitchen)| (name.as_str(), kitchen.title.as_str())).chain(other).collect()
    }
}

struct Field<'f> {
    name: &'f str,
    title: &'f str,
    /// The name of what says more of it.
    meaning: Option<&'f String>,
    value: &'f str,
}

impl Field<'_> {
    fn choice(&self, words: &[(&str, &str)]) -> Markup {
        html! {
            select name=(self.name) aria-label=(self.title) aria-describedby=[self.meaning] {
                option value="" { "not said" }
                @for (word, shown) in words { option value=(word) selected[*word == self.value] { (shown) } }
            }
        }
    }

    fn day(&self) -> Markup {
        html! {
            input type="date" name=(self.name) aria-label=(self.title) aria-describedby=[self.meaning] value=(self.value);
            (self.on_paper())
        }
    }

    /// The value where nothing is typed and a long one must not be cut.
    fn on_paper(&self) -> Markup {
        html! { span.on-paper aria-hidden="true" { (self.value) } }
    }

    fn lines(&self, example: &str) -> Markup {
        html! {
            textarea name=(self.name) aria-label=(self.title) aria-describedby=[self.meaning] rows=(self.value.lines().count().max(1) + 1) spellcheck="false" placeholder=(example) { "\n" (self.value) }
        }
    }

    fn line(&self, key: &Key) -> Markup {
        let wares = matches!(key.name, "like" | "of").then_some("ingredients");
        html! {
            input type="text" name=(self.name) aria-label=(self.title) aria-describedby=[self.meaning] value=(self.value) placeholder=(example(key.value)) list=[wares] autocomplete="off";
            (self.on_paper())
        }
    }
}
