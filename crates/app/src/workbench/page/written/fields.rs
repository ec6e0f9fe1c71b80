//! A table of keys as fields.

use super::{NEW, is_lines, typed};
use formula::read::keys::{Key, Table, Value};
use maud::{Markup, html};
use toml_edit::TableLike;

/// More rows than this are folded away, behind the one that is added.
const FEW: usize = 6;

/// The fields of a table, each named by its path: "oven.fan", "pan.0.across".
pub fn fields(keys: &Table, written: &dyn TableLike, path: &str) -> Markup {
    let (plain, tables): (Vec<&Key>, Vec<&Key>) =
        keys.keys.iter().partition(|key| !matches!(key.value, Value::Table(_) | Value::Tables(_)));
    html! {
        div.written { @for key in plain { (field(key, written, path)) } }
        @for key in tables { (table(key, written, path)) }
    }
}

fn table(key: &Key, written: &dyn TableLike, path: &str) -> Markup {
    let none = toml_edit::Table::new();
    let title = title(key);
    match key.value {
        Value::Table(keys) => {
            let item = written.get(key.name);
            let inner = item.and_then(toml_edit::Item::as_table_like);
            html! {
                @if item.is_none() || inner.is_some() {
                    details.part open[inner.is_some()] {
                        summary { (title) span.fine { ": " (key.meaning) } }
                        (fields(keys, inner.unwrap_or(&none), &format!("{path}{}.", key.name)))
                    }
                }
            }
        }
        Value::Tables(keys) => {
            let item = written.get(key.name);
            let rows = item.and_then(toml_edit::Item::as_array_of_tables);
            let count = rows.map_or(0, toml_edit::ArrayOfTables::len);
            html! {
                @if item.is_none() || rows.is_some() {
                    @let another = html! { fieldset { legend { (title) ": another" } (fields(keys, &none, &format!("{path}{}.{NEW}.", key.name))) } };
                    @let all = html! { @for (n, row) in rows.into_iter().flat_map(toml_edit::ArrayOfTables::iter).enumerate() {
                        fieldset { legend { (title) " " (n + 1) (called(keys, row)) } (fields(keys, row, &format!("{path}{}.{n}.", key.name))) }
                    } };
                    details.part open[count > 0] {
                        summary { (title) span.fine { ": " (key.meaning) } }
                        @if count > FEW { (another) details.part { summary { (count) " that are written" } (all) } } @else { (all) (another) }
                    }
                } @else { p.fine { (title) " stands in the file in a way that is changed in an editor." } }
            }
        }
        _ => html! {},
    }
}

/// What a row is called or about, where its first key says so.
fn called(keys: &Table, row: &dyn TableLike) -> Markup {
    let first = keys.keys.first().filter(|key| matches!(key.value, Value::Text));
    let said = first.and_then(|key| typed(row.get(key.name), key.value)).filter(|text| !text.is_empty());
    html! { @if let Some(said) = said { ": " (said) } }
}

fn field(key: &Key, written: &dyn TableLike, path: &str) -> Markup {
    // What silences rules is written beside them, in the text.
    if matches!(key.value, Value::Reasons | Value::Lines(_)) {
        return html! {};
    }
    let Some(value) = typed(written.get(key.name), key.value) else {
        return html! { p.fine { (title(key)) " stands in the file in a way that is changed in an editor." } };
    };
    let name = format!("{path}{}", key.name);
    let meaning = format!("meaning-{}", name.replace('.', "-"));
    let title = title(key);
    let control = match key.value {
        Value::Word(words) => choice((&name, &title, &meaning), &value, words),
        Value::Truth => choice((&name, &title, &meaning), &value, &["true", "false"]),
        lines if is_lines(lines) || matches!(lines, Value::Sizes) => html! {
            textarea name=(name) aria-label=(title) aria-describedby=(meaning) rows=(value.lines().count().max(1) + 1) spellcheck="false" placeholder=(example(key.value)) { "\n" (value) }
        },
        _ => {
            html! { input type="text" name=(name) aria-label=(title) aria-describedby=(meaning) value=(value) placeholder=(example(key.value)) list=[(key.name == "like").then_some("ingredients")] autocomplete="off"; }
        }
    };
    html! { label { b { (title) } " " span.fine id=(meaning) { (key.meaning) @if key.required { ", needed" } } (control) } }
}

/// A choice of words; it is called by its name, its title and the name of what says more of it.
fn choice((name, title, meaning): (&str, &str, &str), value: &str, words: &[&str]) -> Markup {
    let shown = |word: &str| match word {
        "true" => "yes".to_owned(),
        "false" => "no".to_owned(),
        word => word.to_owned(),
    };
    html! {
        select name=(name) aria-label=(title) aria-describedby=(meaning) {
            option value="" { "not said" }
            @for word in words { option value=(word) selected[*word == value] { (shown(word)) } }
        }
    }
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
