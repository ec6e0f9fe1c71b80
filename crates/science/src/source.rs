//! The papers, handbooks and standards that equations and parameters name by a key.

use std::collections::BTreeMap;
use std::sync::LazyLock;

const FILES: &[&str] = &[
    include_str!("../sources/ferment.toml"),
    include_str!("../sources/heat.toml"),
    include_str!("../sources/keeping.toml"),
    include_str!("../sources/leaven.toml"),
    include_str!("../sources/measure.toml"),
    include_str!("../sources/numeric.toml"),
    include_str!("../sources/nutrition.toml"),
    include_str!("../sources/sensory.toml"),
    include_str!("../sources/shared.toml"),
    include_str!("../sources/sugar.toml"),
];

static CITATIONS: LazyLock<BTreeMap<String, String>> = LazyLock::new(|| {
    let tables = FILES.iter().filter_map(|text| text.parse::<toml::Table>().ok()).flatten();
    tables.filter_map(|(key, entry)| Some((key, citation(entry.as_table()?)?))).collect()
});

/// Returns author, title and year of a source, as a sentence can cite it; none for an unknown key.
///
/// ```
/// let paper = science::source::citation_of("zanoni-1993").expect("a listed source");
/// assert!(paper.contains("1993"));
/// ```
#[must_use]
pub fn citation_of(key: &str) -> Option<&'static str> {
    CITATIONS.get(key).map(String::as_str)
}

fn citation(entry: &toml::Table) -> Option<String> {
    let word = |key: &str| entry.get(key).and_then(toml::Value::as_str);
    let year = entry.get("year").and_then(toml::Value::as_integer).map(|year| format!(" ({year})")).unwrap_or_default();
    let author = word("author").or_else(|| word("publisher")).map(|author| format!("{author}, ")).unwrap_or_default();
    Some(format!("{author}{}{year}", word("title")?))
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_equation_names_a_listed_source() {
        let unknown: Vec<&str> =
            crate::equations().iter().map(|equation| equation.source).filter(|key| super::citation_of(key).is_none()).collect();
        assert!(unknown.is_empty(), "{unknown:?}");
    }
}
