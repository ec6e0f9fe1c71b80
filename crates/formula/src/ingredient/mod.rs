//! What a formula is made of: composition, density, piece weight, allergens, each with its source.

mod builtin;
mod composition;
pub mod eggs;
mod figure;
mod names;
mod pantry;
mod translated;

pub use builtin::{Allergen, Dataset, allergens, builtin_drafts, datasets};
pub use composition::Composition;
pub use figure::Figure;
pub use names::{did_you_mean, nearest, plain_name};
pub use pantry::{Pantry, StockedFile};
pub use translated::Names;

use crate::read::{Group, Leaven};
use quantity::{Density, Fraction, Mass};
use science::measure::yeast::Form;
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
    /// What an ingredient list says of it, where that is not what a recipe calls it.
    pub declared: Option<String>,
    /// Whether it is bought mixed of several things, which its pack lists.
    pub compound: bool,
    /// Other names it is found by.
    pub also: Vec<String>,
    /// The names of all that it starts from, its own first: honey of one's own is still honey.
    pub kinds: Vec<String>,
    /// The group it belongs to: flour, dairy, egg …
    pub group: Group,
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
    /// Whether it was heated when it was made, so that it carries no germs of raw flour or egg.
    pub heat_treated: bool,
    /// Whether a small child can choke on it.
    pub whole_nut: bool,
    /// How the source arrives at carbohydrate.
    pub carbohydrate_basis: String,
    /// Why the figures do not add up to 100 g.
    pub sum_note: String,
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
        self.kinds.iter().any(|kind| kind == "water")
    }

    /// Whether it goes by that name, more closely described or not, or starts from what does: “butter” for
    /// `butter-salted`, “honey” for an author's own that is like honey.
    #[must_use]
    pub fn is_a(&self, name: &str) -> bool {
        self.kinds.iter().any(|kind| kind.strip_prefix(name).is_some_and(|rest| rest.is_empty() || rest.starts_with('-')))
    }

    /// Whether it is that, or something it is mixed of is.
    #[must_use]
    pub fn holds(&self, name: &str) -> bool {
        self.is_a(name) || self.parts.iter().any(|(part, _)| part.holds(name))
    }

    /// The form of yeast it is, if it is yeast.
    #[must_use]
    pub const fn yeast(&self) -> Option<Form> {
        match self.leaven {
            Some(Leaven::FreshYeast) => Some(Form::Fresh),
            Some(Leaven::ActiveDryYeast) => Some(Form::ActiveDry),
            Some(Leaven::InstantYeast) => Some(Form::Instant),
            Some(Leaven::Culture | Leaven::Chemical) | None => None,
        }
    }

    /// Whether something in it is alive and raises a dough.
    #[must_use]
    pub fn is_alive(&self) -> bool {
        self.leaven.is_some_and(|leaven| leaven != Leaven::Chemical)
    }

    /// Whether it carries one of these allergens.
    #[must_use]
    pub fn carries(&self, codes: &[&str]) -> bool {
        self.allergens.iter().any(|code| codes.contains(&code.as_str()))
    }

    /// Whether it is more than a trace of alcohol: over half a percent, where drinks are called alcoholic.
    #[must_use]
    pub fn is_alcoholic(&self) -> bool {
        self.composition.share(Figure::Alcohol).is_some_and(|share| share > Fraction::percent(0.5))
    }

    /// Whether it is milk or pours like it: dairy of more than four fifths water.
    #[must_use]
    pub fn is_milk(&self) -> bool {
        self.group == Group::Dairy && self.composition.share(Figure::Water) > Some(Fraction::percent(80.0))
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
