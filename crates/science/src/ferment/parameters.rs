//! The constants of yeasts, cultures and doughs, read from `data/ferment/`, each with its source.

use crate::entry::{self, Entry, Origin};
use std::sync::LazyLock;

/// One constant of an organism or a material.
#[derive(Clone, Debug, PartialEq)]
pub struct Parameter {
    /// Its path, such as `yeast.gas.at-30`: file, group, name.
    pub name: String,
    /// Its value in that unit.
    pub value: f64,
    /// The unit, in SI and trade symbols.
    pub unit: String,
    /// Where it comes from and how well it is founded.
    pub origin: Origin,
}

/// Every constant of fermentation, in the order of the files.
pub static PARAMETERS: LazyLock<Vec<Parameter>> =
    LazyLock::new(|| FILES.iter().flat_map(|(file, text)| entry::read(text, "constant", |entry| read(file, entry))).collect());

/// The files and their texts.
const FILES: [(&str, &str); 3] = [
    ("yeast", include_str!("../../data/ferment/yeast.toml")),
    ("culture", include_str!("../../data/ferment/culture.toml")),
    ("dough", include_str!("../../data/ferment/dough.toml")),
];

/// The value of a constant by its path.
pub(super) fn value(name: &str) -> f64 {
    let found = PARAMETERS.iter().find(|parameter| parameter.name == name);
    found.map(|parameter| parameter.value).expect("a constant of that name in data/ferment/")
}

fn read(file: &str, entry: &Entry) -> Option<Parameter> {
    Some(Parameter {
        name: format!("{file}.{}", entry.word("name")?),
        value: entry.number("value")?,
        unit: entry.word("unit")?,
        origin: entry.origin()?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_entry_is_read() {
        let entries: usize = FILES.iter().map(|(_, text)| entry::count(text, "constant")).sum();
        assert_eq!(PARAMETERS.len(), entries);
    }
}
