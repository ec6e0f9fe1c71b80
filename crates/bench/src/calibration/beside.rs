//! Outcomes of several trials beside each other, and whether they differ by more than readings and bakes do anyway.

use super::observation::{Observation, What, observations};
use super::{Logged, Outlook};
use crate::forecast::{BAND, Calibration};

/// A figure that was seen in at least one of several trials.
#[derive(Clone, Debug)]
pub struct Outcome {
    /// What it is: of the trial that saw it first.
    pub of: Observation,
    /// What each trial saw.
    pub seen: Vec<Option<f64>>,
    /// What was foreseen of each bake with all that is known of the kitchen, where it can be.
    pub foreseen: Vec<Option<f64>>,
}

impl Outcome {
    /// Half the 5 to 95 % band of a reading: a share, or kelvin.
    #[must_use]
    pub fn band(&self) -> f64 {
        BAND * self.of.what.error()
    }

    /// How far two trials are apart, as a logarithm or in kelvin.
    #[must_use]
    pub fn apart(&self, one: usize, other: usize) -> Option<f64> {
        Some(self.of.what.off((*self.seen.get(other)?)?, (*self.seen.get(one)?)?))
    }

    /// How far two bakes of the same may be apart by readings and by what differs from bake to bake: half the 5 to 95 % band.
    #[must_use]
    pub fn by_chance(&self, known: &Calibration) -> f64 {
        let scatter = match self.of.what {
            What::Risen | What::Doubled | What::Ripe => known.leavens.values().map(|one| one.scatter).fold(0.12, f64::max),
            What::Bowl => known.friction.scatter,
            What::Dough | What::Core => 0.0,
        };
        BAND * libm::sqrt(2.0) * libm::hypot(self.of.what.error(), scatter)
    }
}

/// Sets the outcomes of trials side by side, foreseen with what is known of their kitchen.
#[must_use]
pub fn beside(logged: &[Logged], known: &Calibration) -> Vec<Outcome> {
    let mut all: Vec<Outcome> = Vec::new();
    for (trial, one) in logged.iter().enumerate() {
        let outlook = Outlook::of(one, known);
        for seen in observations(one).0 {
            let foreseen = outlook.foreseen(&seen);
            let at = all.iter().position(|other| is_same(&other.of, &seen) && other.seen[trial].is_none()).unwrap_or_else(|| {
                let none = vec![None; logged.len()];
                all.push(Outcome { of: seen.clone(), seen: none.clone(), foreseen: none });
                all.len() - 1
            });
            (all[at].seen[trial], all[at].foreseen[trial]) = (Some(seen.seen), foreseen);
        }
    }
    all.sort_by_key(|one| one.of.at);
    all
}

/// Whether two figures are of the same thing: of the same stage and step, read at the same time.
fn is_same(one: &Observation, other: &Observation) -> bool {
    let minutes = |seen: &Observation| seen.after.map(|after| after.as_minutes().round());
    one.what == other.what && one.title == other.title && one.step == other.step && minutes(one) == minutes(other)
}
