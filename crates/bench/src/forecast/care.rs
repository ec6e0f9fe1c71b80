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
    /// As closely, and followed no further than until all that is asked was seen: for questions asked backwards.
    Asked,
    /// As closely as a thousand kitchens differ: for trying it many times.
    Quick,
    /// As quickly, and no further than that: for tables that are read in between.
    Table,
}

impl Care {
    pub const fn limits(self) -> Limits {
        match self {
            Self::Full | Self::Asked => LIMITS,
            Self::Quick | Self::Table => Limits { relative: 1e-4, absolute: 1e-7, ..LIMITS },
        }
    }

    /// Whether a course ends where all that its steps ask for was seen.
    pub const fn ends_early(self) -> bool {
        matches!(self, Self::Asked | Self::Table)
    }

    /// How long a course is followed beyond its steps.
    pub fn beyond(self, steps: &[&Step]) -> TimeSpan {
        let ripens = steps.iter().any(|step| step.action == Action::Ferment || step.until == Some(Condition::Ripe));
        match self {
            Self::Quick if !ripens => TimeSpan::hours(6.0),
            Self::Quick => TimeSpan::hours(24.0),
            Self::Full | Self::Asked | Self::Table => BEYOND,
        }
    }
}
