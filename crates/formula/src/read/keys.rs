//! Every key of the document with its kind and meaning: one list that reading, the manual and the
//! schema share.

use super::words::{Action, Attention, Group, HeatsBy, Leaven, Material, PercentOf, StageKind};
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
    /// A table of names and temperatures.
    Temperatures,
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
            Self::Table(_) | Self::Lines(_) | Self::Shares | Self::Composition | Self::Temperatures | Self::Reasons => "a table",
            Self::Source => "a text in quotes",
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

use Value::{
    Composition, Date, Figure as Fig, Lines, Reasons, Shares, Table as Sub, Tables, Temperatures, Text, Texts, Truth, Word,
};

/// A formula file.
pub static FORMULA: Table = Table {
    title: "a formula",
    keys: &[
        must("title", Text, "what readers see"),
        may("intro", Text, "a paragraph or two before the formula; an empty line parts paragraphs"),
        may("tags", Texts, "words to find it by"),
        may("source", Text, "where it comes from"),
        may("notes", Texts, "what else a reader should know"),
        may("storage", Text, "how it keeps"),
        may("photograph", Sub(&PHOTOGRAPH), "a picture with its description"),
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
        may("language", Text, "the language of the texts, as BCP 47 writes it: en-GB"),
        may("address", Text, "where the published book will stand, for links: https://example.org/book"),
        may("spoons", Word(&SPOONS), "whose teaspoons, tablespoons and cups are meant"),
        may("second-units", Word(&SPOONS), "a second system printed beside: spoons, and for the US also °F, inches and ounces"),
        may("eggs", Word(super::EggSize::WORDS), "the egg meant where a line only says how many"),
        may("kitchen", Text, "the kitchen that formulas are worked out for: a file of kitchens/"),
        may("currency", Text, "three letters of ISO 4217: EUR"),
    ],
};

const SPOONS: [&str; 4] = {
    let all = SpoonSystem::ALL;
    [all[0].name(), all[1].name(), all[2].name(), all[3].name()]
};

/// A kitchen's file.
pub static KITCHEN: Table = Table {
    title: "a kitchen",
    keys: &[
        must("title", Text, "what it is called"),
        may(
            "room",
            Fig("a temperature, such as \"21 °C\""),
            "how warm the room is, by day where \"night\" says that it cools down",
        ),
        may("night", Fig("a temperature, such as \"16 °C\""), "how cold the room gets at night"),
        may("room-log", Text, "a file of kitchens/ in which the room was measured by the clock: \"november.csv\""),
        may("fridge", Fig("a temperature, such as \"4 °C\""), "how cold the fridge is"),
        may("proofer", Fig("a temperature, such as \"24-38 °C\""), "what a proofer or a warm place can be set to"),
        may("altitude", Fig("a length, such as \"120 m\""), "how high above the sea"),
        may("hands", Fig("a number of people, such as 2"), "how many people work; one if left out"),
        may("rings", Fig("a number of rings, such as 4"), "how many pans can be on the hob at once; two if left out"),
        may("asleep", Text, "when the baker sleeps, such as \"22:30-06:30\", which is meant if left out"),
        may("out", Texts, "when nobody is in the kitchen, every day: \"12:00-13:30\""),
        may("stored", Temperatures, "how warm ingredients are before they are used, by name"),
        may("scale", Tables(&SCALE), "the scales that stand there"),
        may("hob", Sub(&HOB), "what pans are heated on"),
        may("pan", Tables(&PAN), "its pans"),
        may("oven", Sub(&OVEN), "its oven"),
        may("fryer", Sub(&FRYER), "what it fries in"),
        may("vessel", Tables(&VESSEL), "its bowls, pots and boxes"),
    ],
};

/// What pans are heated on.
pub static HOB: Table = Table {
    title: "a hob",
    keys: &[
        may("heats-by", Word(HeatsBy::WORDS), "how it heats"),
        may("power", Fig("a power, such as \"2 kW\""), "what its largest ring takes up"),
        may("dial", Temperatures, "how hot a pan's surface gets, by the mark of the knob"),
    ],
};

/// A pan.
pub static PAN: Table = Table {
    title: "a pan",
    keys: &[may("title", Text, "what it is called"), must("across", Fig("a length, such as \"24 cm\""), "how wide it is inside")],
};

/// An oven.
pub static OVEN: Table = Table {
    title: "an oven",
    keys: &[
        may("fan", Truth, "whether a fan moves its air"),
        may("real", Temperatures, "how hot a thermometer finds it, by what it is set to: \"200 °C\" = \"190 °C\""),
        may("falls-by", Fig("a difference of temperature, such as \"30 °C\""), "how far it falls when it is opened and loaded"),
        may("recovers-in", Fig("a time, such as \"6 min\""), "how long it takes to come back"),
    ],
};

/// What fat is heated in.
pub static FRYER: Table = Table {
    title: "a fryer",
    keys: &[
        may("holds", Fig("a volume, such as \"2 l\""), "how much fat it holds"),
        may("power", Fig("a power, such as \"2 kW\""), "what it takes up"),
    ],
};

/// A bowl, pot or box.
pub static VESSEL: Table = Table {
    title: "a vessel",
    keys: &[
        may("title", Text, "what it is called"),
        must("holds", Fig("a volume, such as \"4 l\""), "how much it holds, brim-full"),
        may("weighs", Fig("a weight, such as \"900 g\""), "what it weighs empty"),
        may("material", Word(Material::WORDS), "what it is made of"),
    ],
};

/// What things cost, `prices.toml`.
pub static PRICES: Table = Table {
    title: "the prices",
    keys: &[
        may("electricity", Fig("an amount of money, such as \"0.32 EUR\""), "what a kilowatt-hour of electricity costs"),
        may("gas", Fig("an amount of money, such as \"0.12 EUR\""), "what a kilowatt-hour of gas costs"),
        may("hour", Fig("an amount of money, such as \"18 EUR\""), "what an hour of work costs"),
        may("price", Tables(&PRICE), "what packs cost; of several of one ingredient the latest counts"),
    ],
};

/// What a pack costs.
pub static PRICE: Table = Table {
    title: "a price",
    keys: &[
        must("of", Text, "the ingredient"),
        must("pack", Fig("a weight, volume or count, such as \"1.5 kg\" or 10"), "how much is in a pack"),
        must("costs", Fig("an amount of money, such as \"1.35 EUR\""), "what the pack costs"),
        may("on", Text, "the day on which it cost that: 2026-10-01"),
        may("from", Text, "where it is bought"),
    ],
};

/// A scale of a kitchen.
pub static SCALE: Table = Table {
    title: "a scale",
    keys: &[
        may("title", Text, "what it is called"),
        must("shows", Fig("a weight, such as \"1 g\""), "the step of its display"),
        may("up-to", Fig("a weight, such as \"5 kg\""), "the most it can carry"),
    ],
};

/// An ingredient in the author's files and in the built-in table.
pub static INGREDIENT: Table = Table {
    title: "an ingredient",
    keys: &[
        may("title", Text, "what readers see"),
        may("called", Text, "what a recipe's list calls it: \"whole milk\"; the title if left out"),
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

/// A trial: what was seen when a formula was baked.
pub static TRIAL: Table = Table {
    title: "a trial",
    keys: &[
        must("title", Text, "what it is called"),
        must("formula", Text, "the formula that was baked: a file of formulas/"),
        may("revision", Text, "which text of the formula it was, where that is told"),
        may("kitchen", Text, "the kitchen it was baked in: a file of kitchens/; the book's own if left out"),
        must("date", Date, "the day on which it was begun"),
        may("notes", Texts, "what else was seen"),
        may("left-out", Text, "why nothing is to be learnt from it; it is shown all the same"),
        may("mix", Tables(&MIX_SEEN), "a stage as it was mixed"),
        may("rise", Tables(&RISE_SEEN), "a step in which something rose"),
        may("cook", Tables(&COOK_SEEN), "a batch that was cooked"),
    ],
};

/// A stage as it was mixed in a trial.
pub static MIX_SEEN: Table = Table {
    title: "a mix of a trial",
    keys: &[
        must("stage", Text, "the stage of the formula"),
        may("component", Text, "its component, where two have a stage of that name"),
        may("temperature", Fig("a temperature, such as \"24.5 °C\""), "how warm it came from the bowl"),
        may("ingredients", Lines(&WEIGHED), "what was weighed, or how warm it went in, where the formula says otherwise"),
    ],
};

/// An ingredient line as it was weighed.
pub static WEIGHED: Table = Table {
    title: "a line as it was weighed",
    keys: &[
        may("amount", Fig("a weight, such as \"352 g\""), "how much was weighed"),
        may("temperature", Fig("a temperature, such as \"19 °C\""), "how warm it went in"),
    ],
};

/// A step of a trial in which something rose.
pub static RISE_SEEN: Table = Table {
    title: "a rise of a trial",
    keys: &[
        must("stage", Text, "the stage of the formula"),
        may("component", Text, "its component, where two have a stage of that name"),
        may("step", Word(Action::WORDS), "which waiting step it is, by its action; the stage's first if left out"),
        may("room", Fig("a temperature, such as \"20.5 °C\""), "how warm the air was where it stood"),
        may("lasted", Fig("a time, such as \"13 h\""), "how long the step took"),
        may("doubled-after", Fig("a time, such as \"1 h 50 min\""), "when it had twice its volume, from the step's beginning"),
        may("ripe-after", Fig("a time, such as \"9 h\""), "when it was judged ripe, from the step's beginning"),
        may("reading", Tables(&READING), "what a jar and a thermometer showed"),
        may("course", Text, "a CSV file of more readings, beside the trial: columns time, height or volume, temperature"),
    ],
};

/// A reading of a rise.
pub static READING: Table = Table {
    title: "a reading",
    keys: &[
        must("after", Fig("a time, such as \"45 min\""), "when, from the step's beginning; the first one is taken at \"0 min\""),
        may("height", Fig("a length, such as \"62 mm\""), "how high it stood in a jar with straight sides"),
        may("volume", Fig("a volume, such as \"420 ml\""), "how much room it took"),
        may("temperature", Fig("a temperature, such as \"22.5 °C\""), "how warm its middle was"),
    ],
};

/// A batch that was cooked in a trial.
pub static COOK_SEEN: Table = Table {
    title: "a cook of a trial",
    keys: &[
        must("stage", Text, "the stage of the formula"),
        may("component", Text, "its component, where two have a stage of that name"),
        may("step", Word(Action::WORDS), "which step it is, by its action; the stage's first on a griddle or in fat if left out"),
        may("surface", Fig("a temperature, such as \"148 °C\""), "how hot the griddle or the fat was"),
        may("side-time", Fig("a time, such as \"7 min 30 s\""), "the time a side"),
        may("time", Fig("a time, such as \"3 min\""), "how long it was cooked in all"),
        may("thickness", Fig("a length, such as \"19 mm\""), "how thick the piece was that was probed"),
        may("core", Fig("a temperature, such as \"91 °C\""), "how warm its middle was when it left the heat"),
    ],
};

/// The names of composition figures.
pub fn composition() -> impl Iterator<Item = &'static str> {
    Figure::ALL.iter().map(|figure| figure.name())
}
