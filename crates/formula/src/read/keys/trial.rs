//! The keys of a trial.

use super::Value::{Date, Figure as Fig, Lines, Tables, Text, Texts};
use super::{Table, may, must};

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
        may("photograph", Tables(&PHOTOGRAPH_SEEN), "a photograph that was taken, beside the trial"),
        may("correction", Tables(&CORRECTION), "a figure that was put right: what it was before; `trial note` writes it"),
        may("received", Texts, "the numbers of entries that a phone sent, so that none is taken twice"),
    ],
};

/// A stage as it was mixed in a trial.
pub static MIX_SEEN: Table = Table {
    title: "a mix of a trial",
    keys: &[
        must("stage", Text, "the stage of the formula"),
        may("component", Text, "its component, where two have a stage of that name"),
        may("temperature", Fig("a temperature, such as \"24.5 °C\""), "how warm it came from the bowl"),
        may("ph", Fig("a number, such as 5.4"), "its pH, from the bowl"),
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
        may(
            "step",
            Text,
            "which waiting step it is, by its action, \"rise\", or \"rise-2\" for the stage's second of that action; its first waiting step if left out",
        ),
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
        may("ph", Fig("a number, such as 4.6"), "its pH"),
    ],
};

/// A batch that was cooked in a trial.
pub static COOK_SEEN: Table = Table {
    title: "a cook of a trial",
    keys: &[
        must("stage", Text, "the stage of the formula"),
        may("component", Text, "its component, where two have a stage of that name"),
        may(
            "step",
            Text,
            "which step it is, by its action, \"bake\", or \"bake-2\" for the stage's second of that action; its first on a griddle or in fat if left out",
        ),
        may("surface", Fig("a temperature, such as \"148 °C\""), "how hot the griddle or the fat was"),
        may("side-time", Fig("a time, such as \"7 min 30 s\""), "the time a side"),
        may("time", Fig("a time, such as \"3 min\""), "how long it was cooked in all"),
        may("thickness", Fig("a length, such as \"19 mm\""), "how thick the piece was that was probed"),
        may("core", Fig("a temperature, such as \"91 °C\""), "how warm its middle was when it left the heat"),
        may("pieces", Fig("a number of pieces, such as 12"), "how many pieces came of it"),
        may("bake-loss", Fig("a share, such as \"11 %\""), "what share of its weight was lost, from raw to cooled"),
    ],
};

/// A photograph of a trial.
pub static PHOTOGRAPH_SEEN: Table = Table {
    title: "a photograph of a trial",
    keys: &[
        must("file", Text, "the picture's file, beside the trial"),
        may("shows", Text, "what it shows, such as \"crumb\"; photographs of the same are set side by side"),
        may(
            "across",
            Fig("a length, such as \"120 mm\""),
            "how wide that is which the picture shows from edge to edge, for the same scale",
        ),
    ],
};

/// A figure that was put right.
pub static CORRECTION: Table = Table {
    title: "a correction",
    keys: &[
        must("figure", Text, "which figure"),
        must("was", Fig("a figure"), "what it was before"),
        may("at", Text, "when it was put right"),
        may("why", Text, "why"),
    ],
};
