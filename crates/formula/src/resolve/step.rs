//! A step of the method, and the words of its sentence with the figures they are tied to.

use crate::Place;
use crate::read::{Action, Attention, Condition};
use quantity::{Between, Count, Mass, Measure, Temperature, TimeSpan};

/// A step of the method.
#[derive(Clone, Debug)]
pub struct Step {
    /// The trade's verb.
    pub action: Action,
    /// The sentence, references bound.
    pub words: Vec<Word>,
    /// How long.
    pub time: Option<Between<TimeSpan>>,
    /// The time a side.
    pub side_time: Option<Between<TimeSpan>>,
    /// How many pieces go at once.
    pub at_a_time: Option<Count>,
    /// How many of the oven's decks or shelves it takes; all of them if none are stated.
    pub decks: Option<Count>,
    /// The condition.
    pub until: Option<Condition>,
    /// What it is done at.
    pub temperature: Option<Between<Temperature>>,
    /// Whether hands are needed.
    pub attention: Attention,
    /// What it is done with.
    pub equipment: Vec<String>,
    /// Where its sentence stands.
    pub place: Place,
}

impl Step {
    /// How many batches so many pieces take.
    #[must_use]
    pub fn batches(&self, pieces: Option<Count>) -> f64 {
        match (self.at_a_time, pieces) {
            (Some(at_once), Some(pieces)) if at_once > Count::ZERO => (pieces / at_once - 1e-9).ceil().max(1.0),
            _ => 1.0,
        }
    }
}

/// A piece of a method's sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum Word {
    /// Plain words.
    Text(String),
    /// An ingredient line of a stage of this component: which stage, which line, how much of it.
    Line {
        /// The stage, counted within the component.
        stage: usize,
        /// The line, counted within the stage.
        line: usize,
        /// How much is meant.
        mass: Mass,
        /// Whether that is all of the line.
        whole: bool,
        /// What is printed of it.
        shown: Shown,
    },
    /// A stage by its title.
    Stage(usize, usize),
    /// A figure.
    Measure(Measure),
    /// The step's time.
    Time,
    /// The step's time a side.
    SideTime,
    /// The step's condition.
    Until,
    /// The step's temperature.
    Temperature,
    /// The component's number of pieces.
    Pieces,
    /// The component's scaling weight.
    ScalingWeight,
    /// How many people the component serves.
    Serves,
    /// How many pieces go at once.
    AtATime,
    /// What the stage keeps back.
    KeptBack,
    /// How warm an ingredient line goes in.
    LineTemperature(Between<Temperature>),
}

/// What is printed of an ingredient in a sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// "180 g whole milk".
    Both,
    /// "180 g".
    Amount,
    /// "whole milk".
    Name,
}
