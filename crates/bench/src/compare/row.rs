//! A row of a comparison: a figure of every formula, and how far apart they are as they are told.

use super::grade::{Difference, Step, grade};
use formula::Known;
use quantity::{Between, TimeSpan, print};

/// A figure of every formula.
#[derive(Clone, Debug)]
pub struct Row {
    /// What it is.
    pub title: String,
    /// What its figures are in.
    pub unit: Unit,
    /// The figure of each formula; none where it has none.
    pub cells: Vec<Option<Known<f64>>>,
    /// The largest figure less the smallest; of two, the second less the first.
    pub apart: f64,
    /// How much that matters.
    pub difference: Difference,
}

/// What a row's figures are in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Percent of all flour.
    PercentOfFlour,
    /// Gram.
    Grams,
    /// Pieces.
    Pieces,
    /// Hours.
    Hours,
    /// Degrees Celsius.
    Celsius,
}

impl Unit {
    /// The symbol, for a heading or another program.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::PercentOfFlour => "%",
            Self::Grams => "g",
            Self::Pieces => "",
            Self::Hours => "h",
            Self::Celsius => "°C",
        }
    }

    /// How finely a figure is told, in decimals.
    #[must_use]
    pub const fn decimals(self, value: f64) -> usize {
        match self {
            Self::PercentOfFlour if value.abs() < 0.1 => 3,
            Self::PercentOfFlour if value.abs() < 1.0 => 2,
            Self::PercentOfFlour => 1,
            Self::Grams if value.abs() < 10.0 => 1,
            Self::Grams | Self::Celsius | Self::Hours => 0,
            Self::Pieces => 2,
        }
    }

    /// A figure as finely as it is told; times as a person would tell them.
    #[must_use]
    pub fn rounded(self, value: f64) -> f64 {
        if self == Self::Hours {
            return print::rounded_time(Between::just(TimeSpan::hours(value))).from.as_hours();
        }
        // As it is printed, to the last half.
        format!("{value:.*}", self.decimals(value)).parse().unwrap_or(value)
    }
}

impl Row {
    /// A row with its difference graded.
    pub(super) fn new(title: String, unit: Unit, cells: Vec<Option<Known<f64>>>, step: Step) -> Self {
        let (apart, difference) = grade(&cells, step, matches!(unit, Unit::PercentOfFlour | Unit::Grams));
        let mut row = Self { title, unit, cells, apart, difference };
        if row.is_told_alike() {
            row.difference = Difference::None;
        }
        row
    }

    /// Whether any formula has a figure above nothing.
    pub(super) fn says_something(&self) -> bool {
        self.cells.iter().flatten().any(|cell| cell.value != 0.0)
    }

    /// Whether nobody could see a difference in what is told: the figures, or what lies between them.
    fn is_told_alike(&self) -> bool {
        let told: Vec<f64> = self.cells.iter().flatten().map(|cell| self.unit.rounded(cell.value)).collect();
        let is_whole = told.len() == self.cells.len();
        is_whole && (self.unit.rounded(self.apart) == 0.0 || told.windows(2).all(|pair| pair[0] == pair[1]))
    }
}
