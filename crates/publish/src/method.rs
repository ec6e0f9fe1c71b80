//! A step's sentence with its figures in place: as plain text, and in pieces that know which figure they tell.

use crate::words::{Units, counted_title, in_sentence, pieces_in_words, small_in, until_in_pieces};
use formula::resolve::formula::{Shown, Word};
use formula::{Formula, Step};
use quantity::{Between, Count, Mass, Temperature, TimeSpan};

/// A piece of a sentence.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Its text.
    pub text: String,
    /// The figure that it tells, where a reader may have it told otherwise.
    pub figure: Option<Figure>,
}

/// A figure in a sentence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Figure {
    /// A weight of a line of the component: which stage, which line.
    Weight(usize, usize, Mass),
    /// So many pieces of such a line, with its name.
    Counted(usize, usize, Count),
    /// A weight of no line, such as what is kept back.
    Mass(Mass),
    /// What a piece of the component weighs raw.
    Each(Mass),
    /// How many pieces the component has, with their word.
    Pieces(Count),
    /// A number that grows with the batch.
    Number(Count),
    /// A temperature.
    Temperature(Between<Temperature>),
    /// The temperature at which the step is done.
    Stands(Between<Temperature>),
    /// How long the step lasts.
    Lasts(Between<TimeSpan>),
}

impl Piece {
    /// Plain words.
    #[must_use]
    pub fn plain(text: impl Into<String>) -> Self {
        Self { text: text.into(), figure: None }
    }

    /// A figure as it is told.
    #[must_use]
    pub fn of(text: String, figure: Figure) -> Self {
        Self { text, figure: Some(figure) }
    }
}

/// The sentence of a step of a component.
#[must_use]
pub fn sentence(formula: &Formula, at: (usize, usize), step: &Step, units: Units) -> String {
    pieces(formula, at, step, units).into_iter().map(|piece| piece.text).collect()
}

/// The same in pieces.
#[must_use]
pub fn pieces(formula: &Formula, (c, s): (usize, usize), step: &Step, units: Units) -> Vec<Piece> {
    let teller = Teller { formula, c, s, step, units };
    step.words.iter().flat_map(|word| teller.tell(word)).collect()
}

struct Teller<'t> {
    formula: &'t Formula,
    c: usize,
    s: usize,
    step: &'t Step,
    units: Units,
}

impl Teller<'_> {
    fn tell(&self, word: &Word) -> Vec<Piece> {
        let component = &self.formula.components[self.c];
        let (step, yields) = (self.step, &component.yields);
        let (tongue, print) = (self.units.tongue, self.units.tongue.print);
        let told = match word {
            Word::Text(text) => Some(Piece::plain(text.clone())),
            Word::Line { .. } => return self.line(word),
            Word::Stage(c, s) => Some(Piece::plain(self.stage(*c, *s))),
            Word::Measure(measure) => {
                let told = self.units.measure(measure);
                let celsius = measure.temperature().filter(|_| measure.unit.kind() == quantity::Kind::Temperature);
                Some(Piece { text: told, figure: celsius.map(Figure::Temperature) })
            }
            Word::Time => step.time.map(|time| Piece::of(print.time(time), Figure::Lasts(time))),
            Word::SideTime => step.side_time.map(|time| Piece::plain(print.time(time))),
            Word::Until => return step.until.as_ref().map(|one| until_in_pieces(one, self.units)).unwrap_or_default(),
            Word::Temperature => step.temperature.map(|range| Piece::of(self.units.temperature(range), Figure::Stands(range))),
            Word::Pieces => {
                yields.pieces.map(|pieces| Piece::of(pieces_in_words(component, pieces, tongue), Figure::Pieces(pieces)))
            }
            Word::ScalingWeight => yields.scaling_weight.map(|mass| Piece::of(print.mass(mass), Figure::Each(mass))),
            Word::AtATime => step.at_a_time.map(|count| Piece::plain(print.count(count))),
            Word::Serves => yields.serves.map(|serves| Piece::of(print.count(serves), Figure::Number(serves))),
            Word::KeptBack => {
                let kept = component.stages[self.s].kept_back;
                Some(Piece::of(print.mass(kept), Figure::Mass(kept)))
            }
            Word::LineTemperature(range) => Some(Piece::of(self.units.temperature(*range), Figure::Temperature(*range))),
        };
        // The binding made sure that the figure is there; an empty word would only drop it.
        told.into_iter().collect()
    }

    fn line(&self, word: &Word) -> Vec<Piece> {
        let Word::Line { stage, line: index, mass, shown, whole } = word else { return Vec::new() };
        let line = &self.formula.components[self.c].stages[*stage].lines[*index];
        let is_stage = matches!(line.content, formula::Content::Stage(..));
        let (tongue, print) = (self.units.tongue, self.units.tongue.print);
        let name = in_sentence(line, tongue);
        let weight = || Piece::of(print.mass(*mass), Figure::Weight(*stage, *index, *mass));
        match shown {
            Shown::Name => vec![Piece::plain(name)],
            Shown::Amount => vec![weight()],
            // All of another stage is called by its name: nobody weighs a whole dough again.
            Shown::Both if is_stage && *whole => vec![Piece::plain(tongue.the_whole(&name))],
            Shown::Both if is_stage => vec![weight(), Piece::plain(format!(" {}", tongue.part_of_the(&name)))],
            Shown::Both => match line.pieces_of(*mass) {
                Some(pieces) => {
                    let told = format!("{}\u{a0}{}", print.count(pieces), counted_title(line, pieces, tongue));
                    vec![Piece::of(told, Figure::Counted(*stage, *index, pieces))]
                }
                None => vec![weight(), Piece::plain(format!("\u{a0}{name}"))],
            },
        }
    }

    fn stage(&self, c: usize, s: usize) -> String {
        let component = &self.formula.components[c];
        let title = if c == self.c { &component.stages[s].title } else { &component.title };
        self.units.tongue.the_whole(&small_in(title, self.units.tongue))
    }
}
