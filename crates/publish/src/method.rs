//! A step's sentence with its figures in place, as plain text.

use crate::words::{Units, in_sentence, pieces_in_words, small, until};
use formula::resolve::formula::{Shown, Word};
use formula::{Formula, Step};
use quantity::print;

/// The sentence of a step of a component.
#[must_use]
pub fn sentence(formula: &Formula, (c, s): (usize, usize), step: &Step, units: Units) -> String {
    let teller = Teller { formula, c, s, step, units };
    step.words.iter().map(|word| teller.tell(word)).collect()
}

struct Teller<'t> {
    formula: &'t Formula,
    c: usize,
    s: usize,
    step: &'t Step,
    units: Units,
}

impl Teller<'_> {
    fn tell(&self, word: &Word) -> String {
        let component = &self.formula.components[self.c];
        let yields = &component.yields;
        let told = match word {
            Word::Text(text) => Some(text.clone()),
            Word::Line { .. } => Some(self.line(word)),
            Word::Stage(c, s) => Some(self.stage(*c, *s)),
            Word::Measure(measure) => Some(self.units.measure(measure)),
            Word::Time => self.step.time.map(print::time),
            Word::SideTime => self.step.side_time.map(print::time),
            Word::Until => self.step.until.as_ref().map(|condition| until(condition, self.units)),
            Word::Temperature => self.step.temperature.map(|range| self.units.temperature(range)),
            Word::Pieces => yields.pieces.map(|pieces| pieces_in_words(component, pieces)),
            Word::ScalingWeight => yields.scaling_weight.map(print::mass),
            Word::AtATime => self.step.at_a_time.map(print::count),
            Word::Serves => yields.serves.map(print::count),
            Word::KeptBack => Some(print::mass(component.stages[self.s].kept_back)),
            Word::LineTemperature(range) => Some(self.units.temperature(*range)),
        };
        // The binding made sure that the figure is there; an empty word would only drop it.
        told.unwrap_or_default()
    }

    fn line(&self, word: &Word) -> String {
        let Word::Line { stage, line, mass, shown, whole } = word else { return String::new() };
        let line = &self.formula.components[self.c].stages[*stage].lines[*line];
        let is_stage = matches!(line.content, formula::Content::Stage(..));
        let name = in_sentence(line);
        match shown {
            Shown::Name => name,
            Shown::Amount => print::mass(*mass),
            // All of another stage is called by its name: nobody weighs a whole dough again.
            Shown::Both if is_stage && *whole => format!("the {name}"),
            Shown::Both if is_stage => format!("{} of the {name}", print::mass(*mass)),
            Shown::Both => match line.pieces_of(*mass) {
                Some(pieces) => format!("{}\u{a0}{}", print::count(pieces), small(&line.counted_title(pieces))),
                None => format!("{}\u{a0}{name}", print::mass(*mass)),
            },
        }
    }

    fn stage(&self, c: usize, s: usize) -> String {
        let component = &self.formula.components[c];
        let title = if c == self.c { &component.stages[s].title } else { &component.title };
        format!("the {}", small(title))
    }
}
