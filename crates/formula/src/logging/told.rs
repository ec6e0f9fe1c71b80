//! The figures of a trial one by one, by the names under which they are noted.

use toml_edit::{DocumentMut, Item, TableLike, Value};

/// Every figure that a trial's text tells, by its name, in the order of the text; nothing of a text that cannot be read.
#[must_use]
pub fn figures(text: &str) -> Vec<(String, String)> {
    let Ok(document) = text.parse::<DocumentMut>() else { return Vec::new() };
    let mut all = Vec::new();
    for (key, item) in document.iter() {
        match (key, item.as_array_of_tables()) {
            ("correction", _) | ("received", _) => {}
            ("mix" | "rise" | "cook", Some(list)) => list.iter().for_each(|table| of_stage(key, table, &mut all)),
            (_, Some(list)) => list
                .iter()
                .for_each(|table| table.iter().for_each(|(inner, item)| told(&format!("{key}/{inner}"), item, &mut all))),
            (_, None) => told(key, item, &mut all),
        }
    }
    all
}

/// Every correction that a trial's text tells: the figure, and what it was.
#[must_use]
pub fn corrections(text: &str) -> Vec<(String, String)> {
    let Ok(document) = text.parse::<DocumentMut>() else { return Vec::new() };
    let list = document.get("correction").and_then(Item::as_array_of_tables);
    let word = |table: &dyn TableLike, key: &str| table.get(key).and_then(Item::as_value).map(bare).unwrap_or_default();
    list.into_iter().flat_map(|list| list.iter()).map(|table| (word(table, "figure"), word(table, "was"))).collect()
}

/// The figures of a mix, a rise or a cook.
fn of_stage(list: &str, table: &dyn TableLike, all: &mut Vec<(String, String)>) {
    let word = |key: &str| table.get(key).and_then(Item::as_str);
    let component = word("component").map(|name| format!("{name}/")).unwrap_or_default();
    let stage = format!("{component}{}", word("stage").unwrap_or_default());
    let step = word("step").unwrap_or(match list {
        "rise" => "rise",
        "cook" => "cook",
        _ => "mix",
    });
    for (key, item) in table.iter() {
        match key {
            "stage" | "component" | "step" => {}
            "ingredients" => {
                for (line, item) in item.as_table_like().into_iter().flat_map(TableLike::iter) {
                    match item.as_table_like() {
                        Some(own) => own.iter().for_each(|(key, item)| told(&format!("{stage}/{line}/{key}"), item, all)),
                        None => told(&format!("{stage}/{line}/amount"), item, all),
                    }
                }
            }
            "reading" => readings(&format!("{stage}/{step}"), item, all),
            _ => told(&format!("{stage}/{step}/{key}"), item, all),
        }
    }
}

fn readings(of: &str, item: &Item, all: &mut Vec<(String, String)>) {
    let mut one = |table: &dyn TableLike| {
        let after = table.get("after").and_then(Item::as_str).unwrap_or("?");
        table
            .iter()
            .filter(|(key, _)| *key != "after")
            .for_each(|(key, item)| told(&format!("{of}/{key} after {after}"), item, all));
    };
    if let Some(list) = item.as_array_of_tables() {
        list.iter().for_each(|table| one(table));
    }
    for value in item.as_array().into_iter().flatten() {
        if let Value::InlineTable(table) = value {
            one(table);
        }
    }
}

fn told(name: &str, item: &Item, all: &mut Vec<(String, String)>) {
    match item.as_value() {
        Some(Value::Array(list)) => all.extend(list.iter().map(|one| (name.to_owned(), bare(one)))),
        Some(value) => all.push((name.to_owned(), bare(value))),
        None => {}
    }
}

/// A value without quotes and what stands around it.
pub fn bare(value: &Value) -> String {
    value.as_str().map_or_else(|| value.clone().decorated("", "").to_string(), str::to_owned)
}
