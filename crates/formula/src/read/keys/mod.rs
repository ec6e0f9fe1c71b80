//! Every key of the document with its kind and meaning: one list that reading, the manual and the
//! schema share.

mod ingredient;
mod kitchen;
mod label;
mod larder;
mod prices;
mod tasting;
mod trial;

pub use ingredient::{DENSITY, INGREDIENT, PIECE};
pub use kitchen::{FRYER, HOB, KITCHEN, OVEN, PAN, SCALE, VESSEL};
pub use label::LABEL;
pub use larder::LARDER;
pub use prices::{PRICE, PRICES};
pub use tasting::{ATTRIBUTE, SAMPLE, TASTING};
pub use trial::{COOK_SEEN, CORRECTION, MIX_SEEN, PHOTOGRAPH_SEEN, READING, RISE_SEEN, TRIAL, WEIGHED};

use super::words::{Action, Attention, PercentOf, StageKind};
use crate::ingredient::Figure;
use quantity::SpoonSystem;

/// What a key's value may be.
#[derive(Clone, Copy, Debug)]
pub enum Value {
    /// Any text.
    Text,
    /// A figure with its unit; the words say which.
    Figure(&'static str),
    /// One word of a list.
    Word(&'static [&'static str]),
    /// A list of texts; a single one may stand alone.
    Texts,
    /// True or false.
    Truth,
    /// A day of the calendar.
    Date,
    /// A table of these keys.
    Table(&'static Table),
    /// A list of tables of these keys.
    Tables(&'static Table),
    /// A table whose keys are the author's own names, each a figure or a table of these keys.
    Lines(&'static Table),
    /// A table of ingredient names and shares.
    Shares,
    /// A table of composition figures, g per 100 g.
    Composition,
    /// A table of ingredient names and amounts.
    Amounts,
    /// A table of names and temperatures.
    Temperatures,
    /// A number of things, or a table of their sizes and numbers.
    Sizes,
    /// A table of rule names, each with the reason why it is silenced.
    Reasons,
    /// A text, or a table that names a dataset and the entry in it.
    Source,
}

/// A key of a table.
#[derive(Debug)]
pub struct Key {
    /// The key itself.
    pub name: &'static str,
    /// What its value may be.
    pub value: Value,
    /// Whether the table is incomplete without it.
    pub required: bool,
    /// What it means, for the manual, the schema and hints.
    pub meaning: &'static str,
}

/// A table of the document.
#[derive(Debug)]
pub struct Table {
    /// What it is called in messages: "a stage".
    pub title: &'static str,
    /// Its keys in the manual's order.
    pub keys: &'static [Key],
}

impl Table {
    /// The key of that name.
    #[must_use]
    pub fn key(&self, name: &str) -> Option<&'static Key> {
        self.keys.iter().find(|key| key.name == name)
    }
}

impl Value {
    /// The kind in words, for a message.
    #[must_use]
    pub const fn describe(&self) -> &'static str {
        match self {
            Self::Text => "a text in quotes",
            Self::Figure(what) => what,
            Self::Word(_) => "one of the known words, in quotes",
            Self::Texts => "a text, or a list of texts in [ ]",
            Self::Truth => "true or false",
            Self::Date => "a date, such as 2026-11-02",
            Self::Table(_)
            | Self::Lines(_)
            | Self::Shares
            | Self::Composition
            | Self::Amounts
            | Self::Temperatures
            | Self::Reasons => "a table",
            Self::Source => "a text in quotes",
            Self::Sizes => "a number, or a table of sizes and numbers: { \"3 l\" = 2, \"5 l\" = 1 }",
            Self::Tables(_) => "a list of tables, each begun with [[ ]]",
        }
    }
}

const fn must(name: &'static str, value: Value, meaning: &'static str) -> Key {
    Key { name, value, required: true, meaning }
}

const fn may(name: &'static str, value: Value, meaning: &'static str) -> Key {
    Key { name, value, required: false, meaning }
}

/// The key that silences rules at a place, the same in every table that has one.
const QUIET: Key =
    may("quiet", Reasons, "rules that are silenced here, each with the reason: { salt-outside-custom = \"a sweet bread\" }");

use Value::{Figure as Fig, Lines, Reasons, Table as Sub, Tables, Text, Texts, Truth, Word};

/// A formula file.
pub static FORMULA: Table = Table {
    title: "a formula",
    keys: &[
        must("title", Text, "what readers see"),
        may("intro", Text, "a paragraph or two before the formula; an empty line parts paragraphs"),
        may("language", Text, "the language of its texts as BCP 47 writes it, where that is not the book's: \"de\""),
        may("translations", Texts, "the same recipe in other languages: names of formulas of this book"),
        may("tags", Texts, "words to find it by"),
        may("source", Text, "where it comes from"),
        may("notes", Texts, "what else a reader should know"),
        may("storage", Text, "how it keeps"),
        may("served-at", Text, "when it usually comes to the table, such as \"09:30\"; its page then tells the day by the clock"),
        may("photograph", Sub(&PHOTOGRAPH), "a picture with its description"),
        may("evidence", Texts, "the blind tastings that its page may cite: files of tastings/"),
        may("label", Sub(&LABEL), "what a label needs to know beside the formula"),
        QUIET,
        must("component", Tables(&COMPONENT), "what is served together, the main thing first"),
    ],
};

/// A picture.
pub static PHOTOGRAPH: Table = Table {
    title: "a photograph",
    keys: &[
        must("file", Text, "its path in the book's folder"),
        may("alt", Text, "what it shows, for those who cannot see it; a page without it is not accessible"),
    ],
};

/// A component.
pub static COMPONENT: Table = Table {
    title: "a component",
    keys: &[
        must("name", Text, "how the rest of the text calls it: small letters, digits and hyphens"),
        may("title", Text, "what readers see; the name with its hyphens opened if left out"),
        may("yield", Sub(&YIELD), "what comes of it"),
        QUIET,
        must("stage", Tables(&STAGE), "its stages in working order; the last one is what the component is"),
    ],
};

/// A yield.
pub static YIELD: Table = Table {
    title: "a yield",
    keys: &[
        may("pieces", Fig("a number of pieces, such as 12"), "how many pieces are made"),
        may(
            "piece",
            Texts,
            "the word for one piece, and for more if that is not formed with s: \"muffin\" or [\"loaf\", \"loaves\"]",
        ),
        may("scaling-weight", Fig("a weight, such as \"85 g\""), "what one piece weighs raw"),
        may("total", Fig("a weight, such as \"1.2 kg\""), "what all weighs raw, after make-up loss"),
        may("thickness", Fig("a length, such as \"25 mm\""), "how thick a piece is when it meets the heat"),
        may("make-up-loss", Fig("a percentage, such as \"2 %\""), "what stays in bowls and on the bench, as a share of the mix"),
        may("bake-loss", Fig("a percentage, such as \"11 %\""), "what heat drives off, as a share of the raw weight"),
        may("serves", Fig("a number of people"), "how many people it serves"),
        may("tin", Text, "the tin or ring it is written for: \"23 x 13 x 7 cm\", \"round 20 x 5 cm\" or \"2 l\""),
        may("tins", Fig("a number of tins"), "how many such tins; one if left out"),
    ],
};

/// A stage.
pub static STAGE: Table = Table {
    title: "a stage",
    keys: &[
        must("name", Text, "how the rest of the text calls it: small letters, digits and hyphens"),
        may("title", Text, "what readers see; the name with its hyphens opened if left out"),
        must("kind", Word(StageKind::WORDS), "what it is"),
        may("percent-of", Word(PercentOf::WORDS), "what percentages here are shares of; \"stage flour\" if left out"),
        may("flour", Fig("a weight, such as \"500 g\""), "all flour of this stage, where the flours are written as percentages"),
        may(
            "weight",
            Fig("a weight, such as \"1.2 kg\""),
            "all of this stage as mixed, where everything is written as percentages",
        ),
        may("boil-off", Fig("a percentage, such as \"30 %\""), "water that leaves as steam, as a share of the mix"),
        may(
            "loss",
            Fig("a percentage, such as \"4 %\""),
            "what stays in bowl, sieve or pan, as a share of what is left after boiling",
        ),
        may("kept-back", Fig("a weight, such as \"50 g\""), "what is kept for next time, as a culture fed on"),
        QUIET,
        may("ingredients", Lines(&LINE), "a line for each: its name, then its amount or a table"),
        may("step", Tables(&STEP), "what is done, in order"),
    ],
};

/// A line of a stage's ingredients.
pub static LINE: Table = Table {
    title: "an ingredient line",
    keys: &[
        may("amount", Fig("an amount, such as \"350 g\", \"68 %\", \"1 1/2 tsp\", 3, \"2 M\" or \"all\""), "how much"),
        may(
            "share",
            Fig("a percentage, such as \"40 %\""),
            "the part used of the stage, component or formula that the line names",
        ),
        may("ingredient", Text, "the ingredient, where the line has another name"),
        may("stage", Text, "a stage of the same component, where the line has another name"),
        may("component", Text, "a component of the same formula, where the line has another name"),
        may("formula", Text, "another formula of the book, where the line has another name"),
        may("title", Text, "what readers see instead of the ingredient's title"),
        may("note", Text, "how it should be: \"dry and floury, riced warm\""),
        may("temperature", Fig("a temperature, such as \"24 °C\""), "how warm it goes in"),
        may(
            "taken-out",
            Fig("a percentage, such as \"96 %\""),
            "the share of it that is taken out again: strained fruit, a bay leaf, drained frying oil",
        ),
        may("after-scaling", Truth, "whether it is added once the pieces are scaled: a glaze, a dusting"),
        may("as-flour", Truth, "whether it counts as flour here; the ingredient table decides if left out"),
        QUIET,
    ],
};

/// A step.
pub static STEP: Table = Table {
    title: "a step",
    keys: &[
        must("action", Word(Action::WORDS), "the trade's verb for it"),
        must("text", Text, "the sentence readers follow; {names} stand for ingredients and figures"),
        may("time", Fig("a time, such as \"25 min\" or \"12-16 h\""), "how long it takes"),
        may("side-time", Fig("a time, such as \"4 min\""), "the time a side, on a griddle"),
        may(
            "at-a-time",
            Fig("a number of pieces, such as 4"),
            "how many pieces go at once, on a griddle or in fat; time is then the time of one batch",
        ),
        may(
            "decks",
            Fig("a number of decks, such as 2 or \"1/2\""),
            "how many of an oven's decks or shelves a bake takes; all of them if left out",
        ),
        may("until", Text, "the condition: \"ripe\", \"doubled\", \"96 °C core\", \"65 Brix\", or plain words"),
        may("temperature", Fig("a temperature, such as \"20-22 °C\""), "what it is done at: room, oven, fat or dough"),
        may("attention", Word(Attention::WORDS), "\"active\" when hands are needed, which is meant if left out, or \"waiting\""),
        may("equipment", Texts, "what it is done with"),
    ],
};

/// The book's settings, `book.toml`.
pub static BOOK: Table = Table {
    title: "book.toml",
    keys: &[
        must("title", Text, "the book's title"),
        may("author", Text, "the author line of each page"),
        may("language", Text, "the language of the texts, as BCP 47 writes it: en-GB, en-US, de"),
        may("spoons", Word(&SPOONS), "whose teaspoons, tablespoons and cups are meant"),
        may("second-units", Word(&SPOONS), "a second system printed beside: spoons, and for the US also °F, inches and ounces"),
        may("eggs", Word(super::EggSize::WORDS), "the egg meant where a line only says how many"),
        may("kitchen", Text, "the kitchen that formulas are worked out for: a file of kitchens/"),
        may("currency", Text, "three letters of ISO 4217: EUR"),
        may("sold-by", Text, "name and address of whoever answers for what is sold, for labels"),
        may(
            "address",
            Text,
            "where the pages will stand on the web: https://… ; with it come a feed, a site map and canonical links",
        ),
        may(
            "photographs",
            Word(super::PictureKeeping::WORDS),
            "whether pictures lie within the pages, so that each is one file, or beside them",
        ),
    ],
};

const SPOONS: [&str; 4] = {
    let all = SpoonSystem::ALL;
    [all[0].name(), all[1].name(), all[2].name(), all[3].name()]
};

/// The names of composition figures.
pub fn composition() -> impl Iterator<Item = &'static str> {
    Figure::ALL.iter().map(|figure| figure.name())
}
