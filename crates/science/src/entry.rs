//! One entry of a data file: figures of a material or an organism with their source and standing.

use crate::Standing;
use toml::{Table, Value};

/// A figure's origin, shown wherever the figure is used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Origin {
    /// A key of `sources/*.toml`.
    pub source: String,
    /// The page, table or section in the source.
    pub place: String,
    /// How well it is founded.
    pub standing: Standing,
}

/// One entry of a data file, read by the names of its figures. A word that all entries of a file share,
/// such as their source, may stand once at its top.
#[derive(Debug)]
pub struct Entry<'a> {
    row: &'a Table,
    file: &'a Table,
}

/// Turns every entry of a data file's list into a value of its own; an entry that lacks a figure is left out.
#[must_use]
pub fn read<T>(text: &str, list: &str, into: impl Fn(&Entry) -> Option<T>) -> Vec<T> {
    let table: Table = text.parse().unwrap_or_default();
    let entries = table.get(list).and_then(Value::as_array);
    entries.into_iter().flatten().filter_map(Value::as_table).filter_map(|row| into(&Entry { row, file: &table })).collect()
}

/// How many entries a data file's list has, whether readable or not.
#[must_use]
pub fn count(text: &str, list: &str) -> usize {
    let table: Table = text.parse().unwrap_or_default();
    table.get(list).and_then(Value::as_array).map_or(0, Vec::len)
}

impl Entry<'_> {
    /// A number.
    #[must_use]
    pub fn number(&self, key: &str) -> Option<f64> {
        let value = self.row.get(key)?;
        value.as_float().or_else(|| value.as_integer().map(|whole| whole as f64))
    }

    /// A word, of the entry's own or of its whole file.
    #[must_use]
    pub fn word(&self, key: &str) -> Option<String> {
        self.row.get(key).or_else(|| self.file.get(key))?.as_str().map(str::to_owned)
    }

    /// Source, place and standing.
    #[must_use]
    pub fn origin(&self) -> Option<Origin> {
        let standing = match self.word("standing")?.as_str() {
            "published" => Standing::Published,
            "fitted" => Standing::Fitted,
            "common-practice" => Standing::CommonPractice,
            "from-memory" => Standing::FromMemory,
            _ => return None,
        };
        Some(Origin { source: self.word("source")?, place: self.word("place")?, standing })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_entries_share_may_stand_once_and_their_own_word_counts() {
        let text = "source = \"a\"\nplace = \"p\"\nstanding = \"published\"\n[[row]]\nx = 1\n[[row]]\nx = 2\nsource = \"b\"\n";
        let sources = read(text, "row", |entry| Some(entry.origin()?.source));
        assert_eq!(sources, ["a", "b"]);
        assert_eq!((count(text, "row"), count(text, "other"), count("no toml", "row")), (2, 0, 0));
    }
}
