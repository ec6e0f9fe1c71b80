//! Everything that changes while a dough ferments, a kilogram of its flour.

use quantity::{Amount, Mass, Temperature};

/// The state of a dough, for a kilogram of all the flour in it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct State {
    /// Glucose, fructose and what becomes them at once.
    pub hexose: Amount,
    /// Maltose, counted as its hexose.
    pub maltose: Amount,
    /// Starch that the flour's amylases can still set free, counted as hexose.
    pub starch: Amount,
    /// Living yeast, dry.
    pub yeast: Mass,
    /// Lactic acid bacteria, dry.
    pub bacteria: Mass,
    /// Yeast that could still grow before its food other than sugar is gone.
    pub growth_left: Mass,
    /// How awake the yeast is for making gas, 0 to 1.
    pub readiness: f64,
    /// How fast asleep the yeast still is for growing: 0 once its lag is over.
    pub yeast_sleep: f64,
    /// The same of the bacteria.
    pub bacteria_sleep: f64,
    /// Lactic and acetic acid.
    pub acid: Amount,
    /// Carbon dioxide made since the dough was mixed, and what a culture brought.
    pub gas_made: Amount,
    /// Carbon dioxide that left the dough.
    pub gas_lost: Amount,
    /// The dough's temperature, where it is not given from outside.
    pub temperature: Temperature,
}

/// How many numbers a state has.
pub(super) const SIZE: usize = 13;
pub(super) const YEAST: usize = 3;
pub(super) const READINESS: usize = 6;
pub(super) const ACID: usize = 9;
pub(super) const GAS_MADE: usize = 10;
pub(super) const GAS_LOST: usize = 11;
pub(super) const TEMPERATURE: usize = 12;

impl State {
    /// The carbon dioxide still in the dough, dissolved or in bubbles.
    #[must_use]
    pub fn gas_held(&self) -> Amount {
        self.gas_made - self.gas_lost
    }

    /// All sugar that is or can become food.
    #[must_use]
    pub fn sugars(&self) -> Amount {
        self.hexose + self.maltose + self.starch
    }

    pub(super) fn numbers(&self) -> [f64; SIZE] {
        [
            self.hexose.as_moles(),
            self.maltose.as_moles(),
            self.starch.as_moles(),
            self.yeast.as_grams(),
            self.bacteria.as_grams(),
            self.growth_left.as_grams(),
            self.readiness,
            self.yeast_sleep,
            self.bacteria_sleep,
            self.acid.as_millimoles(),
            self.gas_made.as_moles(),
            self.gas_lost.as_moles(),
            self.temperature.as_celsius(),
        ]
    }

    pub(super) fn of(numbers: &[f64; SIZE]) -> Self {
        let [hexose, maltose, starch, yeast, bacteria, room, readiness, yeast_sleep, bacteria_sleep, acid, made, lost, warmth] =
            *numbers;
        Self {
            hexose: Amount::moles(hexose),
            maltose: Amount::moles(maltose),
            starch: Amount::moles(starch),
            yeast: Mass::grams(yeast),
            bacteria: Mass::grams(bacteria),
            growth_left: Mass::grams(room),
            readiness,
            yeast_sleep,
            bacteria_sleep,
            acid: Amount::millimoles(acid),
            gas_made: Amount::moles(made),
            gas_lost: Amount::moles(lost),
            temperature: Temperature::celsius(warmth),
        }
    }
}
