//! The dose with which a preferment that is foreseen past its peak would be ripe in the time its author gives it.

use super::dose::find;
use super::{Dose, When, yeast_for};
use crate::forecast::{Rise, Surroundings, Verdict};
use formula::Formula;
use formula::resolve::formula::StageAt;
use quantity::TimeSpan;

/// A dose for the stated time.
#[derive(Clone, Debug)]
pub struct InTime {
    /// The preferment.
    pub at: StageAt,
    /// When it is to be ripe, from its mixing: the earliest that its author states.
    pub ripe_after: TimeSpan,
    /// The dose that does it.
    pub dose: Dose,
}

/// Finds a dose for every preferment that is past its peak, or spent, when its author uses it; none where no sensible
/// dose does it, or where no yeast is weighed into it.
#[must_use]
pub fn in_time(formula: &Formula, rises: &[Rise], around: &Surroundings) -> Vec<InTime> {
    let one = |rise: &Rise| {
        let is_past = |verdict: Verdict| matches!(verdict, Verdict::PastAndUsable | Verdict::PastThenSpent | Verdict::Spent);
        let step = rise.steps.iter().find(|step| is_past(step.verdict))?;
        let name = &formula.stage(rise.at).name;
        let ripe_after = to_half_hours(step.lasts.from + step.stated?.from);
        let dose = yeast_for(formula, name, When::Ripe(ripe_after), around).ok()?;
        (find(formula, name) == Some(rise.at)).then_some(InTime { at: rise.at, ripe_after, dose })
    };
    rises.iter().filter_map(one).collect()
}

/// A time as one would say it to a preferment: the minutes of mixing are no matter.
fn to_half_hours(time: TimeSpan) -> TimeSpan {
    TimeSpan::hours(((time.as_hours() * 2.0).round() / 2.0).max(0.5))
}
