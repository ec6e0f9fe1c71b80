//! What is remembered: a book's documents, each under its name.

use jiff::Timestamp;

/// What a document is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// The book's own settings.
    Book,
    /// A formula.
    Formula,
    /// Ingredients of the book's own.
    Ingredients,
    /// A kitchen.
    Kitchen,
    /// What is there already.
    Larder,
    /// What things cost.
    Prices,
    /// What is tasted blind, and how.
    Tasting,
    /// What was tried and seen.
    Trial,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 8] =
        [Self::Book, Self::Formula, Self::Ingredients, Self::Kitchen, Self::Larder, Self::Prices, Self::Tasting, Self::Trial];

    /// The word for it, which the database holds.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Book => "book",
            Self::Formula => "formula",
            Self::Ingredients => "ingredients",
            Self::Kitchen => "kitchen",
            Self::Larder => "larder",
            Self::Prices => "prices",
            Self::Tasting => "tasting",
            Self::Trial => "trial",
        }
    }

    /// The kind of a word.
    #[must_use]
    pub fn of(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.word() == word)
    }
}

/// A document that is to be saved.
#[derive(Clone, Copy, Debug)]
pub struct Saving<'s> {
    /// What it is.
    pub kind: Kind,
    /// How it is called: its file's name without the ending.
    pub name: &'s str,
    /// What it says.
    pub text: &'s str,
    /// Why it was changed, in its author's words; empty where nothing was said.
    pub note: &'s str,
    /// Who saves it; empty where nobody was named.
    pub by: &'s str,
    /// When.
    pub at: Timestamp,
    /// The revision that it was made from, 0 for none: a later one in the store is not overwritten but told.
    pub from: Option<i64>,
}
