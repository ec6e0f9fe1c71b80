//! What was read of a formula, before names and sizes are worked out.

use super::head::Head;
use super::{Action, Amount, At, Attention, Condition, Group, Leaven, PercentOf, StageKind};
use crate::ingredient::{Composition, FigureSource, Pictured};
use quantity::{Between, Count, Density, Fraction, Length, Mass, Temperature, TimeSpan, Volume};
use std::ops::Range;
use std::sync::Arc;

/// A formula as written.
#[derive(Clone, Debug)]
pub struct Draft {
    /// The file it stands in.
    pub file: Arc<str>,
    /// The file's name without folder and ending, by which other formulas call it.
    pub name: String,
    /// What stands before the components.
    pub head: Head,
    /// What is served together.
    pub components: Vec<ComponentDraft>,
    /// What the author silenced.
    pub quiets: Vec<Quiet>,
    /// What is written but could not be read, by name: keys, lines, steps, or the whole file where
    /// it is not TOML. What only follows from their absence is not reported.
    pub unread: Vec<String>,
}

/// A rule that the author silenced.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Quiet {
    /// The rule's name as written.
    pub rule: String,
    /// Why.
    pub reason: String,
    /// Where it is written.
    pub place: crate::Place,
    /// The bytes of the file for which it is silenced.
    pub covers: Range<usize>,
}

/// A component as written.
#[derive(Clone, Debug)]
pub struct ComponentDraft {
    /// How the text calls it.
    pub name: At<String>,
    /// What readers see.
    pub title: String,
    /// What comes of it.
    pub yields: Option<YieldDraft>,
    /// Its stages.
    pub stages: Vec<StageDraft>,
}

/// A yield as written.
#[derive(Clone, Debug, Default)]
pub struct YieldDraft {
    /// Where it stands.
    pub span: Range<usize>,
    /// How many pieces.
    pub pieces: Option<At<Count>>,
    /// The words for one piece and for more.
    pub piece: Option<(String, String)>,
    /// What one piece weighs raw.
    pub scaling_weight: Option<At<Mass>>,
    /// What all weighs raw.
    pub total: Option<At<Mass>>,
    /// How thick a piece is when it meets the heat.
    pub thickness: Option<Length>,
    /// What stays in bowls.
    pub make_up_loss: Option<At<Fraction>>,
    /// What heat drives off.
    pub bake_loss: Option<At<Fraction>>,
    /// How many people it serves.
    pub serves: Option<Count>,
    /// The volume of the tin it is written for.
    pub tin: Option<Volume>,
    /// How many tins.
    pub tins: Option<Count>,
}

/// A stage as written.
#[derive(Clone, Debug)]
pub struct StageDraft {
    /// How the text calls it.
    pub name: At<String>,
    /// What readers see.
    pub title: String,
    /// What it is.
    pub kind: StageKind,
    /// What percentages are shares of.
    pub percent_of: PercentOf,
    /// All flour, where flours are percentages.
    pub flour: Option<At<Mass>>,
    /// All of it, where everything is percentages.
    pub weight: Option<At<Mass>>,
    /// Water that leaves as steam.
    pub boil_off: Option<At<Fraction>>,
    /// What stays behind.
    pub loss: Option<At<Fraction>>,
    /// What is kept for next time.
    pub kept_back: Option<At<Mass>>,
    /// Its ingredients.
    pub lines: Vec<LineDraft>,
    /// Its steps.
    pub steps: Vec<StepDraft>,
}

/// What a line says it uses.
#[derive(Clone, Debug, PartialEq)]
pub enum Uses {
    /// Whatever has the line's own name.
    OwnName,
    /// That ingredient.
    Ingredient(At<String>),
    /// That stage of the same component.
    Stage(At<String>),
    /// That component of the same formula.
    Component(At<String>),
    /// That formula of the book.
    Formula(At<String>),
}

/// A line of ingredients as written.
#[derive(Clone, Debug)]
pub struct LineDraft {
    /// Its name in the text.
    pub name: At<String>,
    /// What it uses.
    pub uses: Uses,
    /// How much.
    pub amount: At<Amount>,
    /// What readers see instead of the ingredient's title.
    pub title: Option<String>,
    /// How it should be.
    pub note: Option<String>,
    /// How warm it goes in.
    pub temperature: Option<Between<Temperature>>,
    /// The share of it that is taken out again.
    pub taken_out: Fraction,
    /// Whether it is added once the pieces are scaled.
    pub after_scaling: bool,
    /// Whether it counts as flour.
    pub as_flour: Option<bool>,
}

/// A step as written.
#[derive(Clone, Debug)]
pub struct StepDraft {
    /// The trade's verb.
    pub action: Action,
    /// The sentence, references unread.
    pub text: At<String>,
    /// Where the sentence's letters begin, if they stand in the file just as they read.
    pub letters: Option<usize>,
    /// How long.
    pub time: Option<Between<TimeSpan>>,
    /// The time a side.
    pub side_time: Option<Between<TimeSpan>>,
    /// How many pieces go at once.
    pub at_a_time: Option<Count>,
    /// How many of the oven's decks it takes.
    pub decks: Option<Count>,
    /// The condition.
    pub until: Option<Condition>,
    /// What it is done at.
    pub temperature: Option<Between<Temperature>>,
    /// Whether hands are needed.
    pub attention: Attention,
    /// What it is done with.
    pub equipment: Vec<String>,
}

/// An ingredient as written, in an author's file or the built-in table.
#[derive(Clone, Debug)]
pub struct IngredientDraft {
    /// Its name.
    pub name: At<String>,
    /// What readers see.
    pub title: Option<String>,
    /// What a recipe's list calls it.
    pub called: Option<String>,
    /// Other names.
    pub also: Vec<String>,
    /// The ingredient it starts from.
    pub like: Option<At<String>>,
    /// What it is mixed of.
    pub made_of: Vec<(At<String>, Fraction)>,
    /// What it is.
    pub group: Option<Group>,
    /// Whether it counts as flour.
    pub counts_as_flour: Option<bool>,
    /// How it raises a dough.
    pub leaven: Option<Leaven>,
    /// Its figures.
    pub composition: Composition,
    /// What a millilitre weighs, and whose figure that is.
    pub density: Option<(Density, String)>,
    /// What one piece weighs, and which piece.
    pub piece: Option<Pictured>,
    /// The part that is eaten.
    pub edible: Option<Fraction>,
    /// Codes of the allergen list.
    pub allergens: Option<Vec<String>>,
    /// Whether its sugars count as added.
    pub added_sugar: Option<bool>,
    /// Whether it is bought mixed of several things.
    pub compound: Option<bool>,
    /// What an ingredient list says of it.
    pub declared: Option<String>,
    /// Whether it was heated when it was made.
    pub heat_treated: Option<bool>,
    /// Whether a small child can choke on it.
    pub whole_nut: Option<bool>,
    /// How the source arrives at carbohydrate.
    pub carbohydrate_basis: Option<String>,
    /// Why the figures do not add up to 100 g.
    pub sum_note: Option<String>,
    /// Where the figures come from.
    pub source: Option<FigureSource>,
    /// What else is known of them.
    pub notes: Option<String>,
}
