//! The figures that trials teach.

use super::observation::{Observation, Outlook, What};
use crate::forecast::{Calibration, Learnt};

/// A figure that trials teach.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Parameter {
    /// How fast a dough follows the air it stands in.
    Lag,
    /// What kneading warms a dough by.
    Friction,
    /// How lively a yeast or a culture is, by its ingredient's name.
    Vigour(String),
    /// How well the griddle passes heat into a piece.
    Contact,
}

impl Parameter {
    /// What is known of it.
    #[must_use]
    pub fn of<'c>(&self, calibration: &'c Calibration) -> &'c Learnt {
        match self {
            Self::Lag => &calibration.lag,
            Self::Friction => &calibration.friction,
            Self::Vigour(leaven) => calibration.vigour(leaven),
            Self::Contact => &calibration.contact,
        }
    }

    /// The calibration with that known of it.
    #[must_use]
    pub fn know(&self, calibration: &Calibration, learnt: Learnt) -> Calibration {
        let mut known = calibration.clone();
        match self {
            Self::Lag => known.lag = learnt,
            Self::Friction => known.friction = learnt,
            Self::Vigour(leaven) => {
                known.leavens.insert(leaven.clone(), learnt);
            }
            Self::Contact => known.contact = learnt,
        }
        known
    }

    /// The calibration with another middle of it.
    #[must_use]
    pub fn set(&self, calibration: &Calibration, middle: f64) -> Calibration {
        self.know(calibration, Learnt { middle, ..self.of(calibration).clone() })
    }

    /// Whether a figure that was seen tells of it.
    #[must_use]
    pub fn is_told_by(&self, seen: &Observation, outlook: &Outlook) -> bool {
        match self {
            Self::Lag => seen.what == What::Dough,
            Self::Friction => seen.what == What::Bowl && outlook.kneads(seen),
            Self::Vigour(leaven) => {
                matches!(seen.what, What::Risen | What::Doubled | What::Ripe) && outlook.leaven(seen) == Some(leaven)
            }
            Self::Contact => seen.what == What::Core,
        }
    }

    /// Whether it is a factor, of which the logarithm is learnt; if not, it is in kelvin.
    #[must_use]
    pub const fn is_factor(&self) -> bool {
        !matches!(self, Self::Friction)
    }
}
