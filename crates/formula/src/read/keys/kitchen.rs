//! The keys of a kitchen's file.

use super::Value::{Figure as Fig, Sizes, Table as Sub, Tables, Temperatures, Text, Texts, Truth, Word};
use super::{Table, may, must};
use crate::read::words::{HeatsBy, Material};

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
        may("bowls", Sizes, "how many bowls and tubs can be in use at once, by what they hold if you say; six if left out"),
        may(
            "fridge-room",
            Fig("a volume, such as \"30 l\""),
            "how much of the fridge is free for what is made; 20 l if left out",
        ),
        may("proofer-room", Fig("a volume, such as \"50 l\""), "how much the proofer holds; one thing at a time if left out"),
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
        may("decks", Fig("a number of decks, such as 2"), "how many decks or shelves bake at once; one if left out"),
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

/// A scale of a kitchen.
pub static SCALE: Table = Table {
    title: "a scale",
    keys: &[
        may("title", Text, "what it is called"),
        must("shows", Fig("a weight, such as \"1 g\""), "the step of its display"),
        may("up-to", Fig("a weight, such as \"5 kg\""), "the most it can carry"),
    ],
};
