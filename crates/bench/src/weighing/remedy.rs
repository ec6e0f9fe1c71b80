//! What to do with an amount that a scale cannot show: weigh more of it in water, or bake more.

use quantity::{Fraction, Mass};

/// The rounding that a weighing may cost at most: half a display step is then a twentieth of the amount.
pub const GOOD_TO: Fraction = Fraction::percent(5.0);

/// Ways out for an amount below what a scale shows well.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// Weigh a multiple in water and use a part of that, for what dissolves or can be stirred up.
    pub solution: Option<Solution>,
    /// The smallest multiple of the batch at which the scale is good to ±5 %.
    pub smallest_batch: f64,
}

/// A weighable amount in water, of which a weighable part holds what is wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Solution {
    /// What is weighed of the ingredient: a whole number of display steps.
    pub weigh: Mass,
    /// The water it is stirred into: a whole number of display steps.
    pub water: Mass,
    /// What is used of the whole: a whole number of display steps.
    pub take: Mass,
    /// The water in what is used, to be taken off the formula's water; the rest of it is the ingredient, which
    /// rounding keeps within a part in a hundred of what is wanted.
    pub water_taken: Mass,
}

/// The smallest multiple of the batch at which a scale of that display step is good to ±5 %.
#[must_use]
pub fn smallest_batch(wanted: Mass, step: Mass) -> f64 {
    ((step / wanted) / (2.0 * GOOD_TO.as_ratio())).max(1.0)
}

/// Ten times as much, and at least ten display steps, in so much water that an equal weight of the
/// whole holds what is wanted: for an amount the scale can show, ten times in water and a tenth of it.
#[must_use]
pub fn solution(wanted: Mass, step: Mass) -> Solution {
    let steps = (wanted * 10.0 / step).round().max(10.0);
    let weigh = step * steps;
    let whole = step * (weigh * (weigh / wanted) / step).round();
    let holds = weigh * (weigh / whole);
    Solution { weigh, water: whole - weigh, take: weigh, water_taken: weigh - holds }
}
