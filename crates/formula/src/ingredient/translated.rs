//! What built-in ingredients are called in languages other than English.

use crate::read::{German, IngredientDraft, read_ingredients};
use crate::source::Source;
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// The names of built-in ingredients in a language.
#[derive(Debug)]
pub struct Names {
    rows: BTreeMap<String, IngredientDraft>,
}

static COMMON: LazyLock<Names> = LazyLock::new(|| Names::read("de", include_str!("../../data/names/de.toml")));
static AUSTRIAN: LazyLock<Names> = LazyLock::new(|| {
    let own = Names::read("de-AT", include_str!("../../data/names/de-AT.toml"));
    Names { rows: COMMON.rows.iter().chain(&own.rows).map(|(name, row)| (name.clone(), row.clone())).collect() }
});
static SWISS: LazyLock<Names> = LazyLock::new(|| {
    let spelt = |text: &Option<String>| text.as_ref().map(|text| text.replace('ß', "ss"));
    let row = |(name, row): (&String, &IngredientDraft)| {
        let (title, called, declared) = (spelt(&row.title), spelt(&row.called), spelt(&row.declared));
        (name.clone(), IngredientDraft { title, called, declared, ..row.clone() })
    };
    Names { rows: COMMON.rows.iter().map(row).collect() }
});

impl Names {
    /// The names in a language as BCP 47 writes it; none for English, and for a language that has none yet.
    #[must_use]
    pub fn in_language(language: &str) -> Option<&'static Self> {
        German::of(language).map(|german| match german {
            German::Common => &*COMMON,
            German::Austrian => &*AUSTRIAN,
            German::Swiss => &*SWISS,
        })
    }

    fn read(language: &str, text: &str) -> Self {
        let read = read_ingredients(&Source { file: format!("data/names/{language}.toml").into(), text: text.to_owned() });
        debug_assert!(read.diagnostics.is_empty(), "{:?}", read.diagnostics);
        Self { rows: read.value.into_iter().map(|row| (row.name.value.clone(), row)).collect() }
    }

    /// The ingredients that have a name.
    pub fn all(&self) -> impl Iterator<Item = &str> {
        self.rows.keys().map(String::as_str)
    }

    /// Whether an ingredient has a name.
    #[must_use]
    pub fn has(&self, ingredient: &str) -> bool {
        self.rows.contains_key(ingredient)
    }

    /// A row of the built-in table under its name in this language; it is still found by its English ones.
    #[must_use]
    pub fn over(&self, mut draft: IngredientDraft) -> IngredientDraft {
        if let Some(row) = self.rows.get(&draft.name.value) {
            draft.title.clone_from(&row.title);
            draft.called.clone_from(&row.called);
            draft.declared.clone_from(&row.declared);
            draft.also.extend(row.also.iter().cloned());
            // A bare key of TOML has no letters outside ASCII.
            draft.also.extend(row.also.iter().map(|name| in_ascii(name)).filter(|name| !row.also.contains(name)));
        }
        draft
    }
}

/// A German name as it is written where there are no umlauts.
fn in_ascii(name: &str) -> String {
    [("ä", "ae"), ("ö", "oe"), ("ü", "ue"), ("ß", "ss")].iter().fold(name.to_owned(), |name, (from, to)| name.replace(from, to))
}
