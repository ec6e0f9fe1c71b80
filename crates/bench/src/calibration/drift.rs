//! How a leaven's liveliness drifts from week to week.

use super::{Evidence, Lesson};
use crate::forecast::BAND;

/// What trials say of a drift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drift {
    /// By how much the logarithm changes in a week.
    pub a_week: f64,
    /// The standard deviation of that.
    pub error: f64,
}

impl Drift {
    /// Whether it is more than chance would make: nought lies outside of its 5 to 95 % band.
    #[must_use]
    pub fn is_told(&self) -> bool {
        self.a_week.abs() > BAND * self.error
    }
}

/// With fewer trials than this any line would do.
const FEWEST: usize = 3;

/// Returns the drift over the days on which trials were baked: the weighted least squares of a straight line; nothing of
/// fewer than three trials, or of trials on one day.
///
/// ```text
/// b = Σ w_i·(t_i − t̄)·x_i / Σ w_i·(t_i − t̄)²,   w_i = 1/(s² + e_i²),   error of b = 1/√(Σ w_i·(t_i − t̄)²)
/// ```
///
/// `x_i`, `e_i`: what each trial says and how far its readings leave that open; `s`: the scatter from one bake to the next;
/// `t_i`: weeks.
#[must_use]
pub fn drift(lesson: &Lesson, day: impl Fn(usize) -> Option<f64>) -> Option<Drift> {
    let scatter = lesson.after.scatter;
    let dated = |one: &Evidence| Some((day(one.trial)? / 7.0, one.middle, 1.0 / (scatter * scatter + one.error * one.error)));
    let points: Vec<(f64, f64, f64)> = lesson.evidence.iter().filter_map(dated).collect();
    if points.len() < FEWEST {
        return None;
    }
    let weight: f64 = points.iter().map(|(_, _, weight)| weight).sum();
    let middle = points.iter().map(|(week, _, weight)| week * weight).sum::<f64>() / weight;
    let spread: f64 = points.iter().map(|(week, _, weight)| weight * (week - middle) * (week - middle)).sum();
    let moved: f64 = points.iter().map(|(week, said, weight)| weight * (week - middle) * said).sum();
    (spread > 0.0).then(|| Drift { a_week: moved / spread, error: 1.0 / spread.sqrt() })
}
