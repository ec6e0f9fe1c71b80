//! The constants of yeasts, cultures and doughs, read from `data/`, each with its source.

use crate::Standing;
use std::sync::LazyLock;
use toml::de::{DeTable, DeValue};

/// One constant of an organism or a material.
#[derive(Clone, Debug, PartialEq)]
pub struct Parameter {
    /// Its path, such as `yeast.gas.at-30`: file, group, name.
    pub name: String,
    /// Its value in that unit.
    pub value: f64,
    /// The unit, in SI and trade symbols.
    pub unit: String,
    /// A key of `sources/ferment.toml`.
    pub source: String,
    /// The page, table or observation it rests on.
    pub place: String,
    /// How well it is founded.
    pub standing: Standing,
}

/// Every constant of fermentation, in the order of the files.
pub static PARAMETERS: LazyLock<Vec<Parameter>> = LazyLock::new(|| {
    [
        ("yeast", include_str!("../../data/yeast.toml")),
        ("culture", include_str!("../../data/culture.toml")),
        ("dough", include_str!("../../data/dough.toml")),
    ]
    .iter()
    .flat_map(|(file, text)| read(file, text))
    .collect()
});

/// The value of a constant by its path.
pub(super) fn value(name: &str) -> f64 {
    PARAMETERS
        .iter()
        .find(|parameter| parameter.name == name)
        .map(|parameter| parameter.value)
        .expect("a constant of that name in data/")
}

fn read(file: &str, text: &str) -> Vec<Parameter> {
    let table = DeTable::parse(text).expect("the built-in constants are TOML");
    let mut found = Vec::new();
    for (group, entries) in table.get_ref() {
        let entries = entries.get_ref().as_table().expect("a group of constants");
        for (name, entry) in entries {
            let entry = entry.get_ref().as_table().expect("a constant is a table");
            found.push((entry_place(entry), parameter(format!("{file}.{}.{}", group.get_ref(), name.get_ref()), entry)));
        }
    }
    found.sort_by_key(|(place, _)| *place);
    found.into_iter().map(|(_, parameter)| parameter).collect()
}

fn entry_place(entry: &DeTable) -> usize {
    entry.get("value").map_or(0, |value| value.span().start)
}

fn parameter(name: String, entry: &DeTable) -> Parameter {
    let word = |key: &str| {
        entry.get(key).and_then(|v| v.get_ref().as_str()).expect("each constant has its unit, source, place and standing")
    };
    Parameter {
        name,
        value: entry.get("value").and_then(|v| number(v.get_ref())).expect("each constant has a value"),
        unit: word("unit").to_owned(),
        source: word("source").to_owned(),
        place: word("place").to_owned(),
        standing: match word("standing") {
            "published" => Standing::Published,
            "fitted" => Standing::Fitted,
            "common practice" => Standing::CommonPractice,
            _ => Standing::FromMemory,
        },
    }
}

fn number(value: &DeValue) -> Option<f64> {
    match value {
        DeValue::Float(float) => float.as_str().parse().ok(),
        DeValue::Integer(integer) => integer.as_str().parse().ok(),
        _ => None,
    }
}
