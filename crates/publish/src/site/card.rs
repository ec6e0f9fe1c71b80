//! What the book's own pages tell of a formula: enough for lists and links, so that a page that has not changed
//! need not be worked out again for them.

use crate::tongue::Tongue;
use crate::words::makes;
use formula::read::BookSettings;
use formula::{Content, Formula};
use plan::hours;
use quantity::{TimeSpan, print};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// A formula in a few words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Card {
    /// Its name, which its page is called by.
    pub name: String,
    /// What readers see.
    pub title: String,
    /// Its own language, where that is not the book's.
    pub language: Option<String>,
    /// The formulas that are the same recipe in other languages, as it states them.
    pub translations: Vec<String>,
    /// The first sentence of its introduction.
    pub lead: String,
    /// Words to find it by.
    pub tags: Vec<String>,
    /// What it makes.
    pub makes: String,
    /// How long from start to table, if its steps tell.
    pub time: Option<String>,
    /// What goes in, each once: ingredients by name.
    pub ingredients: Vec<Used>,
    /// The other formulas whose products go in, by name.
    pub formulas: Vec<String>,
}

/// An ingredient that a formula uses.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Used {
    /// Its name in the ingredient table.
    pub name: String,
    /// What readers see.
    pub title: String,
}

/// A formula's card with the moments, as RFC 3339 writes them, when its page came first and changed last.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dated {
    /// The card.
    pub card: Card,
    /// When its page was first published.
    pub published: String,
    /// When its page last changed.
    pub updated: String,
}

impl Card {
    /// The card of a formula.
    #[must_use]
    pub fn of(formula: &Formula, settings: &BookSettings) -> Self {
        let tongue = Tongue::of(settings.language_of(&formula.head));
        let (mut ingredients, mut formulas) = (BTreeMap::new(), Vec::new());
        for (_, line) in formula.lines() {
            match &line.content {
                Content::Ingredient(one) => drop(ingredients.insert(one.name.clone(), one.title.clone())),
                Content::Formula(blend) if !formulas.contains(&blend.name) => formulas.push(blend.name.clone()),
                Content::Formula(_) | Content::Stage(..) => {}
            }
        }
        let total = hours(formula).total;
        Self {
            name: formula.name.clone(),
            title: formula.head.title.clone(),
            language: formula.head.language.clone().filter(|language| *language != settings.language),
            translations: formula.head.translations.iter().map(|name| name.value.clone()).collect(),
            lead: crate::page::first_sentence(&formula.head.intro).to_owned(),
            tags: formula.head.tags.clone(),
            makes: formula.components.first().map(|main| makes(main, tongue)).unwrap_or_default(),
            time: (total.to > TimeSpan::ZERO).then(|| tongue.print.time(print::rounded_time(total))),
            ingredients: ingredients.into_iter().map(|(name, title)| Used { name, title }).collect(),
            formulas,
        }
    }

    /// The card as the record keeps it.
    #[must_use]
    pub fn to_json(&self) -> Value {
        let ingredients: Vec<[&str; 2]> = self.ingredients.iter().map(|one| [one.name.as_str(), one.title.as_str()]).collect();
        json!({
            "title": self.title, "lead": self.lead, "tags": self.tags, "makes": self.makes, "time": self.time,
            "ingredients": ingredients, "formulas": self.formulas, "language": self.language, "translations": self.translations,
        })
    }

    /// The card of a formula that a record kept; none if it is not to be read.
    #[must_use]
    pub fn from_json(name: &str, kept: &Value) -> Option<Self> {
        let text = |key: &str| kept.get(key)?.as_str().map(str::to_owned);
        let texts = |key: &str| -> Option<Vec<String>> {
            kept.get(key)?.as_array()?.iter().map(|one| one.as_str().map(str::to_owned)).collect()
        };
        let used =
            |pair: &Value| Some(Used { name: pair.get(0)?.as_str()?.to_owned(), title: pair.get(1)?.as_str()?.to_owned() });
        Some(Self {
            name: name.to_owned(),
            title: text("title")?,
            lead: text("lead")?,
            tags: texts("tags")?,
            makes: text("makes")?,
            time: text("time"),
            ingredients: kept.get("ingredients")?.as_array()?.iter().map(used).collect::<Option<_>>()?,
            formulas: texts("formulas")?,
            language: text("language"),
            translations: texts("translations").unwrap_or_default(),
        })
    }
}
