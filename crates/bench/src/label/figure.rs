//! A figure of a label: printed where it is known well enough, a gap where sources leave too much untold.

use super::contents::Held;
use science::nutrition::printed::Printed;

/// A figure as a label shows it.
#[derive(Clone, Debug, PartialEq)]
pub enum Shown {
    /// As it is printed.
    Printed(Printed),
    /// As it is printed, though sources leave a little untold.
    Nearly {
        /// What is printed: what sources tell.
        printed: Printed,
        /// The most that is missing.
        lacks: f64,
        /// For which ingredients no source tells it.
        untold: Vec<String>,
    },
    /// What is not known well enough to be printed.
    Gap {
        /// The least it can be.
        least: f64,
        /// The most it can be, where something bounds it.
        most: Option<f64>,
        /// For which ingredients no source tells it.
        untold: Vec<String>,
    },
}

impl Shown {
    /// A figure rounded by a rule: printed if what is untold cannot change what is printed, or is no more than is
    /// allowed to lack of a figure that is more than a trace.
    #[must_use]
    pub fn of(held: &Held, allowed: f64, print: impl Fn(f64) -> Printed) -> Self {
        let printed = print(held.told);
        let lacks = held.most - held.told;
        if lacks.is_finite() && print(held.most) == printed {
            return Self::Printed(printed);
        }
        let is_more_than_a_trace = matches!(printed, Printed::Amount { value, .. } if value > 0.0);
        if lacks <= allowed && is_more_than_a_trace {
            return Self::Nearly { printed, lacks, untold: held.untold.clone() };
        }
        let most = Some(held.most).filter(|most| most.is_finite());
        Self::Gap { least: held.told, most, untold: held.untold.clone() }
    }

    /// What is printed, if anything is.
    #[must_use]
    pub const fn printed(&self) -> Option<Printed> {
        match self {
            Self::Printed(printed) | Self::Nearly { printed, .. } => Some(*printed),
            Self::Gap { .. } => None,
        }
    }
}
