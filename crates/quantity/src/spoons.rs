//! Which spoons and cups are meant: four countries' measures that differ by up to a third.

use crate::Volume;

/// A system of spoons and cups. A book names one; they are never mixed silently.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum SpoonSystem {
    /// Teaspoon 5 ml, tablespoon 15 ml, cup 250 ml.
    #[default]
    Metric,
    /// As metric, but a tablespoon of 20 ml.
    Australian,
    /// The US customary teaspoon, tablespoon, cup and fluid ounce, from the inch-based gallon.
    UsCustomary,
    /// The rounded US measures of nutrition labels, 21 CFR 101.9(b)(5)(viii).
    UsLabel,
}

impl SpoonSystem {
    /// All systems, in the order in which help lists them.
    pub const ALL: [Self; 4] = [Self::Metric, Self::Australian, Self::UsCustomary, Self::UsLabel];

    /// The name in a book's settings.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Metric => "metric",
            Self::Australian => "australian",
            Self::UsCustomary => "us-customary",
            Self::UsLabel => "us-label",
        }
    }

    /// The system of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|system| system.name() == name)
    }

    /// The teaspoon.
    #[must_use]
    pub const fn teaspoon(self) -> Volume {
        Volume::millilitres(match self {
            Self::UsCustomary => 4.928_921_593_75,
            _ => 5.0,
        })
    }

    /// The tablespoon.
    #[must_use]
    pub const fn tablespoon(self) -> Volume {
        Volume::millilitres(match self {
            Self::Australian => 20.0,
            Self::UsCustomary => 14.786_764_781_25,
            _ => 15.0,
        })
    }

    /// The cup.
    #[must_use]
    pub const fn cup(self) -> Volume {
        Volume::millilitres(match self {
            Self::UsCustomary => 236.588_236_5,
            Self::UsLabel => 240.0,
            _ => 250.0,
        })
    }

    /// The fluid ounce; the metric systems know none and take the US customary one.
    #[must_use]
    pub const fn fluid_ounce(self) -> Volume {
        Volume::millilitres(match self {
            Self::UsLabel => 30.0,
            _ => 29.573_529_562_5,
        })
    }
}
