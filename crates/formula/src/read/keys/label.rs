//! The keys of what a label needs to know.

use super::Value::{Figure as Fig, Text, Texts, Truth, Word};
use super::{Table, may};
use science::nutrition::serving::EATEN_AS;

/// What a label needs to know beside the formula.
pub static LABEL: Table = Table {
    title: "a label",
    keys: &[
        may("name", Text, "what the food is, as its label says it; the formula's title if left out"),
        may("of", Texts, "the components that are sold together, by name; all that are served if left out"),
        may("stressed", Texts, "ingredients and components whose quantity is stated, beside those that the name names"),
        may("pieces", Fig("a number of pieces, such as 4"), "how many pieces are in a pack; one if left out"),
        may("net", Fig("a weight, such as \"300 g\""), "what is in a pack, where it is not sold by the piece"),
        may("portion", Fig("a weight, such as \"60 g\""), "what one person eats at a time; a piece if left out"),
        may("eaten-as", Word(EATEN_AS), "the kind of food from which American law takes the serving"),
        may(
            "keeps",
            Fig("a time, such as \"3 days\""),
            "how long it keeps once packed, as your own trials or a laboratory showed",
        ),
        may("use-by", Truth, "whether it perishes and must be used by that day; \"best before\" if left out"),
        may("storage", Text, "how a buyer keeps it; the formula's storage if left out"),
    ],
};
