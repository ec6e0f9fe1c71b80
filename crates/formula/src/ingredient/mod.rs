//! What a formula is made of: composition, density, piece weight, allergens, each with its source.

mod builtin;
mod composition;
pub mod eggs;
mod figure;
mod names;
mod pantry;

pub use builtin::{Allergen, Dataset, allergens, builtin_drafts, datasets};
pub use composition::Composition;
pub use figure::Figure;
pub use names::{nearest, plain_name};
pub use pantry::{Pantry, StockedFile};

use crate::read::Leaven;
use quantity::{Density, Fraction, Mass};
use std::sync::Arc;

/// What one piece weighs, and which piece is pictured.
#[derive(Clone, Debug, PartialEq)]
pub struct Pictured {
    /// What it weighs, without shell, peel or stone.
    pub weighs: Mass,
    /// Which piece is meant, and whose figure it is.
    pub of: String,
}

/// Where an ingredient's figures come from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FigureSource {
    /// The key of a published dataset, if it is one.
    pub dataset: Option<String>,
    /// The entry's number there.
    pub id: Option<String>,
    /// The entry's name there, or the source in the author's words.
    pub name: String,
}

/// An ingredient with everything that is known of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Ingredient {
    /// Its name in formulas.
    pub name: String,
    /// What readers see.
    pub title: String,
    /// What a recipe's list calls it.
    pub called: String,
    /// Other names it is found by.
    pub also: Vec<String>,
    /// The names of all that it starts from, its own first: honey of one's own is still honey.
    pub kinds: Vec<String>,
    /// The group it belongs to: flour, dairy, egg …
    pub group: String,
    /// Whether percentages are shares of it.
    pub counts_as_flour: bool,
    /// How it raises a dough.
    pub leaven: Option<Leaven>,
    /// What it is mixed of, where that is stated: a culture of flour and water.
    pub parts: Vec<(Arc<Ingredient>, Fraction)>,
    /// Its figures per 100 g.
    pub composition: Composition,
    /// What a millilitre weighs, and whose figure that is.
    pub density: Option<(Density, String)>,
    /// What one piece weighs.
    pub piece: Option<Pictured>,
    /// The part that is eaten.
    pub edible: Fraction,
    /// Codes of the allergen list.
    pub allergens: Vec<String>,
    /// Whether its sugars count as added.
    pub added_sugar: bool,
    /// Where the figures come from.
    pub source: FigureSource,
    /// What else is known of them.
    pub notes: String,
    /// Whether it is the author's own.
    pub own: bool,
}

impl Ingredient {
    /// Whether it is plain water, which nominal hydration counts.
    #[must_use]
    pub fn is_water(&self) -> bool {
        self.name == "water"
    }

    /// The shares of flour of it, its parts counted in.
    #[must_use]
    pub fn flour_share(&self) -> Fraction {
        if self.parts.is_empty() {
            return if self.counts_as_flour { Fraction::WHOLE } else { Fraction::ZERO };
        }
        self.parts.iter().map(|(part, share)| part.flour_share().of(*share)).sum()
    }

    /// What it is mixed of down to single ingredients, with shares of the whole; itself if it is single.
    #[must_use]
    pub fn singles(self: &Arc<Self>) -> Vec<(Arc<Self>, Fraction)> {
        if self.parts.is_empty() {
            return vec![(Arc::clone(self), Fraction::WHOLE)];
        }
        let deeper = |(part, share): &(Arc<Self>, Fraction)| {
            let share = *share;
            part.singles().into_iter().map(move |(single, inner)| (single, inner.of(share))).collect::<Vec<_>>()
        };
        self.parts.iter().flat_map(deeper).collect()
    }
}
