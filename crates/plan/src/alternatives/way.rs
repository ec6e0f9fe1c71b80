//! The ways in which a dough can be spread over the day.

use formula::read::{Action, Attention};
use formula::{Formula, Stage};
use quantity::TimeSpan;

/// A way of spreading a dough over the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Mixed at once and baked on the same day.
    SameDay,
    /// A preferment that stands overnight at room temperature.
    Overnight,
    /// The dough rises overnight in the fridge.
    Cold,
}

/// What stands so long stands over a night: common practice, no source.
const A_NIGHT: TimeSpan = TimeSpan::hours(6.0);

impl Way {
    /// All of them, from the quickest on.
    pub const ALL: [Self; 3] = [Self::SameDay, Self::Overnight, Self::Cold];

    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::SameDay => "same-day",
            Self::Overnight => "overnight",
            Self::Cold => "cold",
        }
    }

    /// The way of that word.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|way| way.word() == word)
    }

    /// The way in which a formula is written.
    #[must_use]
    pub fn of(formula: &Formula) -> Self {
        if formula.stages().any(|(_, stage)| stands(stage, Action::Retard)) {
            Self::Cold
        } else if formula.stages().any(|(_, stage)| is_long_preferment(stage)) {
            Self::Overnight
        } else {
            Self::SameDay
        }
    }
}

/// Whether a stage is a preferment that ripens over a night.
pub fn is_long_preferment(stage: &Stage) -> bool {
    stage.kind.is_preferment() && stands(stage, Action::Ferment)
}

fn stands(stage: &Stage, action: Action) -> bool {
    let waits = stage.steps.iter().filter(|step| step.action == action && step.attention == Attention::Waiting);
    waits.filter_map(|step| step.time).any(|time| time.to >= A_NIGHT)
}
