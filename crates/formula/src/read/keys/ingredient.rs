//! The keys of an ingredient.

use super::Value::{self, Composition, Figure as Fig, Shares, Table as Sub, Text, Texts, Truth, Word};
use super::{Table, may, must};
use crate::read::words::{Group, Leaven};

/// An ingredient in the author's files and in the built-in table.
pub static INGREDIENT: Table = Table {
    title: "an ingredient",
    keys: &[
        may("title", Text, "what readers see"),
        may("called", Text, "what a recipe's list calls it: \"whole milk\"; the title if left out"),
        may("declared", Text, "what an ingredient list says of it, its parts in brackets: \"cream (milk), acid: citric acid\""),
        may("compound", Truth, "whether it is bought mixed of several things, so that its pack's own list belongs on a label"),
        may("also", Texts, "other names it is found by"),
        may("like", Text, "the ingredient whose figures it starts from"),
        may("made-of", Shares, "what it is mixed of, so that a culture's flour and water are counted"),
        may("group", Word(Group::WORDS), "what it is, where it starts from no other ingredient"),
        may("counts-as-flour", Truth, "whether percentages are shares of it"),
        may("leaven", Word(Leaven::WORDS), "how it raises a dough"),
        may("per-100-g", Composition, "figures in g per 100 g edible portion, as on a label"),
        may("carbohydrate-basis", Text, "how the source arrives at carbohydrate"),
        may("sum-note", Text, "why the figures do not add up to 100 g"),
        may("density", Sub(&DENSITY), "what a millilitre weighs, with the source"),
        may("piece", Sub(&PIECE), "what one piece weighs"),
        may("edible", Fig("a share between 0 and 1"), "the part that is left after peel, shell or stone"),
        may("allergens", Texts, "codes of the allergen list, such as \"wheat\" or \"milk\""),
        may("added-sugar", Truth, "whether its sugars count as added"),
        may("heat-treated", Truth, "whether it was heated when it was made, so that it carries no germs of raw flour or egg"),
        may("whole-nut", Truth, "whether a small child can choke on it"),
        may("source", Value::Source, "where the figures come from"),
        may("notes", Text, "what else is known of the figures"),
    ],
};

/// A density with its source.
pub static DENSITY: Table = Table {
    title: "a density",
    keys: &[
        must("grams-per-ml", Fig("a number"), "gram per millilitre, as spooned or poured"),
        may("source", Text, "where the figure comes from"),
    ],
};

/// A piece weight.
pub static PIECE: Table = Table {
    title: "a piece",
    keys: &[
        must("weighs", Fig("a weight, such as \"50 g\""), "what one weighs, without shell, peel or stone"),
        may("of", Text, "which piece is meant"),
    ],
};
