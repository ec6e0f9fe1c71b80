//! How closely a course is followed: as the model is, or as kitchens differ.

use formula::Step;
use formula::read::{Action, Condition};
use quantity::TimeSpan;
use science::ferment::{LIMITS, Limits};

/// How long a course is followed beyond its steps, to see when it would have peaked.
pub const BEYOND: TimeSpan = TimeSpan::hours(36.0);

/// How closely a course is followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Care {
    /// As closely as the model is, with all that is told of it.
    Full,
    /// As closely as a thousand kitchens differ: for trying it many times.
    Quick,
    /// As quickly, and followed as far as in full until all that is asked was seen: for tables that are read in between.
    Table,
}

impl Care {
    pub const fn limits(self) -> Limits {
        match self {
            Self::Full => LIMITS,
            Self::Quick | Self::Table => Limits { relative: 1e-4, absolute: 1e-7, ..LIMITS },
        }
    }

    /// How long a course is followed beyond its steps.
    pub fn beyond(self, steps: &[&Step]) -> TimeSpan {
        let ripens = steps.iter().any(|step| step.action == Action::Ferment || step.until == Some(Condition::Ripe));
        match self {
            Self::Quick if !ripens => TimeSpan::hours(6.0),
            Self::Quick => TimeSpan::hours(24.0),
            Self::Full | Self::Table => BEYOND,
        }
    }
}
