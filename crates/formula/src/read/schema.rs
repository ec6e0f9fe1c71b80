//! The keys of the document as JSON Schema and as a page of the manual, from the one list in `keys`.

use super::keys::{BOOK, FORMULA, INGREDIENT, KITCHEN, Key, LARDER, PRICES, TASTING, TRIAL, Table, Value as Kind, composition};
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

/// A kind of file of a book.
#[derive(Clone, Copy, Debug)]
pub struct FileKind {
    /// Where it lies in the book.
    pub path: &'static str,
    /// The name of its schema in `docs/`.
    pub schema: &'static str,
    table: &'static Table,
    /// Whether the file is one table of these keys, or a table of them by name.
    by_name: bool,
}

/// The kinds of files of a book.
pub const FILES: [FileKind; 8] = [
    FileKind { path: "formulas/*.toml", schema: "formula.schema.json", table: &FORMULA, by_name: false },
    FileKind { path: "book.toml", schema: "book.schema.json", table: &BOOK, by_name: false },
    FileKind { path: "kitchens/*.toml", schema: "kitchen.schema.json", table: &KITCHEN, by_name: false },
    FileKind { path: "ingredients/*.toml", schema: "ingredients.schema.json", table: &INGREDIENT, by_name: true },
    FileKind { path: "trials/*.toml", schema: "trial.schema.json", table: &TRIAL, by_name: false },
    FileKind { path: "tastings/*.toml", schema: "tasting.schema.json", table: &TASTING, by_name: false },
    FileKind { path: "prices.toml", schema: "prices.schema.json", table: &PRICES, by_name: false },
    FileKind { path: "larder.toml", schema: "larder.schema.json", table: &LARDER, by_name: false },
];

/// The JSON Schema (draft 2020-12) of a kind of file, so that editors complete and check keys.
#[must_use]
pub fn schema(file: &FileKind) -> Value {
    let mut whole = Map::new();
    whole.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
    whole.insert("title".to_owned(), json!(file.path));
    let table = of_table(file.table);
    if file.by_name {
        whole.insert("type".to_owned(), json!("object"));
        whole.insert("additionalProperties".to_owned(), table);
    } else if let Value::Object(table) = table {
        whole.extend(table);
    }
    Value::Object(whole)
}

fn of_table(table: &Table) -> Value {
    let properties: Map<String, Value> = table.keys.iter().map(|key| (key.name.to_owned(), of_key(key))).collect();
    let required: Vec<&str> = table.keys.iter().filter(|key| key.required).map(|key| key.name).collect();
    let mut schema = json!({ "type": "object", "properties": properties, "additionalProperties": false });
    if !required.is_empty() {
        schema["required"] = json!(required);
    }
    schema
}

fn of_key(key: &Key) -> Value {
    let mut schema = of_kind(&key.value);
    schema["description"] = json!(key.meaning);
    schema
}

fn of_kind(kind: &Kind) -> Value {
    let number_or_text = json!({ "type": ["string", "number"] });
    match kind {
        Kind::Text => json!({ "type": "string" }),
        Kind::Figure(_) => number_or_text,
        Kind::Word(words) => json!({ "enum": words }),
        Kind::Texts => json!({ "anyOf": [{ "type": "string" }, { "type": "array", "items": { "type": "string" } }] }),
        Kind::Truth => json!({ "type": "boolean" }),
        Kind::Date => json!({ "type": "string", "format": "date" }),
        Kind::Table(table) => of_table(table),
        Kind::Tables(table) => json!({ "type": "array", "items": of_table(table) }),
        Kind::Lines(table) => json!({ "type": "object", "additionalProperties": { "anyOf": [number_or_text, of_table(table)] } }),
        Kind::Amounts => json!({ "type": "object", "additionalProperties": number_or_text }),
        Kind::Shares | Kind::Temperatures | Kind::Reasons => {
            json!({ "type": "object", "additionalProperties": { "type": "string" } })
        }
        Kind::Composition => {
            let figures: Map<String, Value> =
                composition().chain(["salt"]).map(|name| (name.to_owned(), json!({ "type": "number" }))).collect();
            json!({ "type": "object", "properties": figures, "additionalProperties": false })
        }
        Kind::Source => json!({ "anyOf": [{ "type": "string" }, { "type": "object" }] }),
        Kind::Sizes => json!({
            "anyOf": [number_or_text, { "type": "object", "additionalProperties": { "type": "number" } }]
        }),
    }
}

/// The manual's page of all keys.
#[must_use]
pub fn manual() -> String {
    let mut page = String::from(
        "# Every key of the document\n\nMade by the program from its own list; see [document.md](document.md) for how they work together.\n",
    );
    let mut told = BTreeSet::new();
    for file in FILES {
        page.push_str(&format!("\n## {}\n", file.path));
        tell(file.table, &mut page, &mut told);
    }
    page
}

/// A table's keys, then those of the tables within it, each once.
fn tell(table: &'static Table, page: &mut String, told: &mut BTreeSet<&'static str>) {
    if !told.insert(table.title) {
        return;
    }
    page.push_str(&format!("\n### {}\n\n| key | value | meaning |\n|---|---|---|\n", table.title));
    for key in table.keys {
        let must = if key.required { " (must be there)" } else { "" };
        page.push_str(&format!("| `{}`{must} | {} | {} |\n", key.name, value_in_words(&key.value), key.meaning));
    }
    for key in table.keys {
        if let Kind::Table(inner) | Kind::Tables(inner) | Kind::Lines(inner) = key.value {
            tell(inner, page, told);
        }
    }
}

fn value_in_words(kind: &Kind) -> String {
    match kind {
        Kind::Word(words) => words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", "),
        Kind::Composition => {
            format!("a table of {}, `salt`", composition().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", "))
        }
        Kind::Shares => "a table of ingredient names and percentages".to_owned(),
        Kind::Amounts => "a table of ingredient names and amounts".to_owned(),
        Kind::Temperatures => "a table of names and temperatures".to_owned(),
        Kind::Reasons => "a table of rule names and reasons".to_owned(),
        Kind::Lines(_) => "a table: the author's own names, each with an amount or a table of these keys".to_owned(),
        other => other.describe().to_owned(),
    }
}
