//! Gestures: what a hand does to a formula's sheet, written into the author's own text. Everything that is not
//! meant stays as it stands: order, comments, and which lines are weights and which percentages.

mod amount;
mod lines;
mod total;

use crate::exchange::{Manuscript, Part, Unfit};
use formula::resolve::formula::StageAt;
use formula::source::Source;
use formula::{Book, Checked, Formula};
use quantity::Mass;
use std::sync::Arc;

/// Something done to a formula.
#[derive(Clone, Debug, PartialEq)]
pub enum Gesture {
    /// A line's amount as typed: "350 g", "65 %", "2 tbsp", "1 M".
    Amount(StageAt, String, String),
    /// A line holds its weight, or its percentage, when the flour changes.
    Hold(StageAt, String, Holding),
    /// A stage weighs so much in all; the lines of these names stay as they are.
    Total(StageAt, Mass, Vec<String>),
    /// An ingredient, by any of its names, comes in.
    Add(StageAt, String, String),
    /// A line goes out, and with it what the method says of it.
    TakeOut(StageAt, String),
    /// A line moves past its neighbour.
    Move(StageAt, String, Neighbour),
    /// A word of a step, a yield or a stage: its key and what it says now; empty takes it out.
    Word(Part, &'static str, String),
}

/// The line past which another moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Neighbour {
    /// The one above.
    Above,
    /// The one below.
    Below,
}

/// What a line holds while others move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holding {
    /// Its weight.
    Weight,
    /// Its share of the stage's flour.
    Share,
}

/// The keys that a hand may write by [`Gesture::Word`].
pub const KEYS: [&str; 13] = [
    "time",
    "temperature",
    "until",
    "side-time",
    "at-a-time",
    "text",
    "title",
    "pieces",
    "scaling-weight",
    "make-up-loss",
    "bake-loss",
    "serves",
    "tin",
];

/// What stands under a key of a formula's text, if it is text.
#[must_use]
pub fn written(text: &str, part: Part, key: &str) -> Option<String> {
    Manuscript::new(text).get(part, key)
}

/// What a gesture works on.
struct Sheet<'s> {
    book: &'s Book,
    source: &'s Source,
    before: &'s Formula,
    manuscript: Manuscript,
}

/// The text of a formula after a gesture, and what was done, in a few words.
///
/// # Errors
/// [`Unfit`] says what does not fit and what the formula has instead; nothing is changed then.
pub fn gesture(book: &Book, source: &Source, gesture: &Gesture) -> Result<(String, String), Unfit> {
    let before = book.revised(source).value;
    let mut sheet = Sheet { book, source, before: &before, manuscript: Manuscript::new(&source.text) };
    let done = match gesture {
        Gesture::Amount(at, line, amount) => sheet.amount(*at, line, amount)?,
        Gesture::Hold(at, line, holding) => sheet.hold(*at, line, *holding)?,
        Gesture::Total(at, mass, locked) => sheet.total(*at, *mass, locked)?,
        Gesture::Add(at, name, amount) => sheet.add(*at, name, amount)?,
        Gesture::TakeOut(at, line) => sheet.take_out(*at, line)?,
        Gesture::Move(at, line, past) => sheet.shift(*at, line, *past)?,
        Gesture::Word(part, key, text) => sheet.word(*part, key, text)?,
    };
    Ok((sheet.manuscript.text, done))
}

impl Sheet<'_> {
    fn work_out(&self, text: &str) -> Checked<Formula> {
        self.book.revised(&Source { file: Arc::clone(&self.source.file), text: text.to_owned() })
    }

    /// The line of a name in a stage that is there.
    fn line(&self, (c, s): StageAt, name: &str) -> Result<&formula::Line, Unfit> {
        let stage = self.before.components.get(c).and_then(|component| component.stages.get(s));
        let nothing = |has: Vec<String>| Unfit::Nothing { wanted: format!("line “{name}” there"), has };
        let stage = stage.ok_or_else(|| nothing(Vec::new()))?;
        let found = stage.lines.iter().find(|line| line.name == name);
        found.ok_or_else(|| nothing(stage.lines.iter().map(|line| line.name.clone()).collect()))
    }

    fn word(&mut self, part: Part, key: &str, text: &str) -> Result<String, Unfit> {
        let text = text.trim();
        if text.chars().any(|c| c.is_control() && c != '\n' && c != '\t') {
            return Err(Unfit::NotSo("a sentence has no control characters".to_owned()));
        }
        match (self.manuscript.get_raw(part, key), text) {
            (None, "") => {}
            (Some(_), "") => self.manuscript.remove(part, key),
            (Some(_), text) => self.manuscript.set(part, key, text, key),
            (None, text) => {
                let beside = self.manuscript.last_key(part);
                let beside = beside.ok_or_else(|| Unfit::Nothing { wanted: "such a part".to_owned(), has: Vec::new() })?;
                self.manuscript.set(part, key, text, &beside);
            }
        }
        Ok(if text.is_empty() { format!("{key} taken out") } else { format!("{key}: {text}") })
    }
}
