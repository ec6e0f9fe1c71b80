//! Slips of the pen: a figure that is far off what was expected, and what would fit in its place.

use super::observation::What;
use super::{Compared, Lessons};

/// A figure that is asked about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Question {
    /// Which trial.
    pub trial: usize,
    /// Which of its figures.
    pub figure: usize,
    /// What was expected of it from all that is known without this trial.
    pub expected: f64,
    /// What may have been meant, if a usual slip would explain it.
    pub instead: Option<f64>,
}

/// A figure this far off is asked about: twice or half as much, or so many kelvin. Judgement: no kitchen that was ever
/// fitted lies so far from what is known of it.
const fn far(what: What) -> f64 {
    match what {
        What::Core => 12.0,
        What::Dough | What::Bowl => 6.0,
        What::Risen | What::Doubled | What::Ripe => std::f64::consts::LN_2,
    }
}

/// What may have been meant by a figure: a clock read twelve hours off, minutes for hours, a comma slipped in a height, the other scale.
/// Common practice, no source.
fn meant(what: What, seen: f64) -> Vec<f64> {
    match what {
        What::Doubled | What::Ripe => vec![seen - 12.0, seen + 12.0, seen / 60.0, seen * 60.0, seen - 1.0, seen + 1.0],
        What::Risen => vec![seen / 10.0, seen * 10.0],
        What::Dough | What::Bowl | What::Core => {
            vec![(seen - 32.0) / 1.8, seen * 1.8 + 32.0, seen - 10.0, seen + 10.0, seen / 10.0, seen * 10.0]
        }
    }
}

/// Another figure fits where it is so much nearer, as a share of how far off the one written down is.
const NEARER: f64 = 0.4;

impl Lessons {
    /// The figures that are far off what was expected of them, each with what may have been meant.
    #[must_use]
    pub fn questions(&self) -> Vec<Question> {
        let counted = self.trials.iter().enumerate().filter(|(_, trial)| trial.left_out.is_none());
        let figures =
            counted.flat_map(|(at, trial)| trial.figures.iter().enumerate().map(move |(figure, one)| (at, figure, one)));
        figures.filter_map(|(trial, figure, one)| asked(trial, figure, one)).collect()
    }
}

fn asked(trial: usize, figure: usize, one: &Compared) -> Option<Question> {
    let (what, seen) = (one.seen.what, one.seen.seen);
    let expected = one.apart.or(one.before)?;
    let off = |value: f64| what.off(expected, value).abs();
    if off(seen) <= far(what) {
        return None;
    }
    let can_be = |value: &f64| *value > 0.0 && off(*value) < NEARER * off(seen);
    let instead = meant(what, seen).into_iter().filter(can_be).min_by(|a, b| off(*a).total_cmp(&off(*b)));
    Some(Question { trial, figure, expected, instead })
}
