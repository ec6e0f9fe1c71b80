//! A plan for a trial: which batches to bake on which day and in which order, and how many must taste them.
//!
//! What cannot all be baked in a day is parted into days so that a good day favours no level, or thinned out so that
//! what is mixed up is said. Orders are random and seeded.

mod days;
mod panel;
mod propose;
mod two_levels;

pub use panel::{Panel, Question, panel};
pub use propose::propose;
pub use science::sensory::forced_choice::Test;
pub use two_levels::{Fraction, confounded, fraction, products};

use std::fmt;

/// What is varied, and how.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Factor {
    /// What it is called: "dose".
    pub name: String,
    /// Its levels: "0.5 %", "1 %".
    pub levels: Vec<String>,
}

/// What is to be planned.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// What is varied.
    pub factors: Vec<Factor>,
    /// How many batches can be baked on a day.
    pub a_day: usize,
    /// On how many days.
    pub days: usize,
    /// Where the random order starts: the same seed gives the same plan everywhere.
    pub seed: u64,
}

/// A batch to bake.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Batch {
    /// The level of each factor, counted from the first.
    pub levels: Vec<usize>,
    /// The three figures by which tasters know it.
    pub code: u16,
}

/// How a plan is made up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Every combination on every day, so many times a day.
    CompleteDays {
        /// How often each stands in a day.
        times: usize,
    },
    /// Every combination once over several days; these products of factors cannot be told from the day.
    Confounded {
        /// Each as the factors in it, counted from the first.
        with_the_day: Vec<Vec<usize>>,
        /// How often the whole is baked.
        times: usize,
    },
    /// Not every combination on every day, but each two on equally many.
    BalancedPairs {
        /// On how many days each combination is baked.
        each: usize,
        /// On how many days each two are baked together.
        together: usize,
    },
    /// Every combination once, the days as even as could be found.
    EvenDays {
        /// Whether every level of every factor stands equally often in each day, as far as its size allows.
        is_even: bool,
    },
    /// A part of all combinations, chosen so that each factor's own effect is told from every other's.
    Part {
        /// How it is chosen.
        fraction: Fraction,
        /// Whether the days see every level equally often; none where all is baked on one day.
        is_even: Option<bool>,
    },
}

/// A plan: batches by day, in the order of baking.
#[derive(Clone, Debug)]
pub struct Plan {
    /// What is varied.
    pub factors: Vec<Factor>,
    /// How it is made up.
    pub kind: Kind,
    /// The days.
    pub days: Vec<Vec<Batch>>,
    /// The seed it was drawn with.
    pub seed: u64,
}

/// Why there is no plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoPlan {
    /// Nothing is varied.
    NothingVaried,
    /// A factor has fewer than two levels, or one of them twice.
    NotTwoLevels(String),
    /// Two factors have the same name.
    NamedTwice(String),
    /// More factors, levels, days or batches than anybody bakes.
    TooLarge,
    /// So many batches are the fewest, and so many can be baked.
    TooMany {
        /// The fewest that tell the factors apart.
        fewest: usize,
        /// What can be baked.
        can: usize,
    },
}

impl fmt::Display for NoPlan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NothingVaried => f.write_str("no factor is varied"),
            Self::NotTwoLevels(name) => write!(f, "“{name}” needs at least two different levels"),
            Self::NamedTwice(name) => write!(f, "two factors are called “{name}”"),
            Self::TooLarge => write!(f, "a plan has at most {MOST_FACTORS} factors and {MOST_BATCHES} batches"),
            Self::TooMany { fewest, can } => {
                write!(
                    f,
                    "{fewest} batches are the fewest that tell these factors apart, and {can} can be baked: bake on more days, or drop a factor or a level"
                )
            }
        }
    }
}

/// The most factors of a plan: more at once tell nobody anything.
pub const MOST_FACTORS: usize = 7;
/// The most batches of a plan.
pub const MOST_BATCHES: usize = 240;
