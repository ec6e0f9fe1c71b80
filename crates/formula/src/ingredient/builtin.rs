//! The built-in table: published figures in our own layout, with their datasets and licences.

use crate::read::{Group, IngredientDraft, read_ingredients};
use crate::source::Source;
use std::sync::LazyLock;
use toml::de::{DeTable, DeValue};

macro_rules! groups {
    ($($group:ident = $file:literal),+ $(,)?) => {
        const GROUPS: &[(Group, &str)] = &[$((Group::$group, include_str!(concat!("../../data/ingredients/", $file, ".toml")))),+];
    };
}

groups!(
    Flour = "flour",
    Starch = "starch",
    Sugar = "sugar",
    Syrup = "syrup",
    Dairy = "dairy",
    Egg = "egg",
    Fat = "fat",
    Fruit = "fruit",
    Nut = "nut",
    Chocolate = "chocolate",
    Spice = "spice",
    Leaven = "leaven",
    Liquid = "liquid",
    Spirit = "spirit",
    Salt = "salt",
    Other = "other",
);

/// The rows of the built-in table by group, as read.
pub fn builtin_drafts() -> impl Iterator<Item = (Group, Vec<IngredientDraft>)> {
    GROUPS.iter().map(|(group, text)| {
        let source = Source { file: format!("data/ingredients/{}.toml", group.word()).into(), text: (*text).to_owned() };
        let read = read_ingredients(&source);
        debug_assert!(read.diagnostics.is_empty(), "{:?}", read.diagnostics);
        (*group, read.value)
    })
}

/// A published dataset that the table draws on.
#[derive(Clone, Debug)]
pub struct Dataset {
    /// The key by which rows name it.
    pub key: String,
    /// Its title.
    pub title: String,
    /// Its release.
    pub release: String,
    /// Its licence.
    pub licence: String,
    /// The attribution it asks for.
    pub attribution: String,
}

/// A substance that labels must name.
#[derive(Clone, Debug)]
pub struct Allergen {
    /// The code in ingredient rows.
    pub code: String,
    /// What readers see.
    pub title: String,
    /// Which of the fourteen groups of European law it belongs to, if any.
    pub european: Option<String>,
    /// What American law calls it, if it is one of the nine.
    pub american: Option<String>,
    /// The words by which a list of ingredients names it, small.
    pub words: Vec<String>,
    /// Those of a German list, the first the one that is added; a star says that more of a word may follow.
    pub german: Vec<String>,
}

/// The datasets, in the order of their file.
pub fn datasets() -> &'static [Dataset] {
    static DATASETS: LazyLock<Vec<Dataset>> = LazyLock::new(|| {
        rows(include_str!("../../data/sources.toml"), |key, word| Dataset {
            key,
            title: word("title"),
            release: word("release"),
            licence: word("licence"),
            attribution: word("attribution"),
        })
    });
    &DATASETS
}

/// The allergens, in the order of their file.
pub fn allergens() -> &'static [Allergen] {
    static ALLERGENS: LazyLock<Vec<Allergen>> = LazyLock::new(|| {
        let some = |word: String| Some(word).filter(|word| !word.is_empty());
        rows(include_str!("../../data/allergens.toml"), |code, word| Allergen {
            code,
            title: word("title"),
            european: some(word("eu")),
            american: some(word("us")),
            words: word("words").split(", ").map(str::to_owned).collect(),
            german: word("de").split(", ").map(str::to_owned).collect(),
        })
    });
    &ALLERGENS
}

/// One value a table of a data file, in written order.
fn rows<T>(text: &'static str, row: impl Fn(String, &dyn Fn(&str) -> String) -> T) -> Vec<T> {
    let (table, _) = DeTable::parse_recoverable(text);
    let mut entries: Vec<_> = table.get_ref().iter().collect();
    entries.sort_by_key(|(key, _)| key.span().start);
    entries
        .into_iter()
        .filter_map(|(key, value)| {
            let DeValue::Table(fields) = value.get_ref() else { return None };
            let word = |name: &str| fields.get(name).and_then(|v| v.get_ref().as_str()).unwrap_or_default().to_owned();
            Some(row(key.get_ref().to_string(), &word))
        })
        .collect()
}
