//! A ferment foreseen anew from what was seen of it while it goes on.

use super::as_done::{as_it_stands, from_the_bowl};
use crate::forecast::{Learnt, Rise, Surroundings, is_mixing, quick_rises, rises};
use formula::Formula;
use formula::resolve::formula::StageAt;
use quantity::{Between, Temperature, TimeSpan};

/// What was seen at a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Saw {
    /// How warm it came from the bowl, or how warm it is where it stands.
    Warm(Temperature),
    /// Risen to so many times what it was when the step began, so long after that.
    Risen {
        /// After how long.
        after: TimeSpan,
        /// To how many times its volume.
        times: f64,
    },
}

/// Something that was seen, and where.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Observed {
    /// The stage.
    pub at: StageAt,
    /// The step.
    pub step: usize,
    /// What was seen.
    pub saw: Saw,
}

/// Why something that was seen teaches nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Untold {
    /// Nothing is foreseen of that step.
    NothingForeseen,
    /// No liveliness that a leaven could have makes it rise so.
    DoesNotFit,
}

/// How far a reading of a rise may be off, as in a trial: two readings by eye agree no better.
const READ: f64 = 0.06;
/// The logarithm of the vigour is looked for within this of none: from an eighth to eight times.
const WIDEST: f64 = 2.1;
/// So many halvings find it to a thousandth.
const HALVINGS: usize = 14;

/// The rises of a formula with what was seen in place of what was foreseen: temperatures first, then for each rise the
/// liveliness of its leaven that explains it.
///
/// # Errors
/// Tells which of them teaches nothing, and why.
pub fn foreseen_anew(formula: &Formula, around: &Surroundings, observed: &[Observed]) -> Result<Vec<Rise>, (usize, Untold)> {
    let mut done = as_it_stands(formula, around);
    for one in observed {
        let Saw::Warm(temperature) = one.saw else { continue };
        let stage = &mut done.components[one.at.0].stages[one.at.1];
        if is_mixing(stage.steps[one.step].action) {
            from_the_bowl(stage, temperature);
        } else {
            stage.steps[one.step].temperature = Some(Between::just(temperature));
        }
    }
    let mut around = around.clone().as_measured();
    for (number, one) in observed.iter().enumerate() {
        let Saw::Risen { after, times } = one.saw else { continue };
        let (leaven, vigour) = explained(&done, &around, one, after, times).map_err(|why| (number, why))?;
        let trials = around.calibration.vigour(&leaven).trials + 1;
        around.calibration.leavens.insert(leaven, Learnt { middle: vigour, spread: READ, scatter: 0.0, trials });
    }
    Ok(rises(&done, &around))
}

/// The leaven of a rise, and the logarithm of the vigour with which it has risen as it was seen.
fn explained(
    formula: &Formula,
    around: &Surroundings,
    one: &Observed,
    after: TimeSpan,
    times: f64,
) -> Result<(String, f64), Untold> {
    let place = &formula.stage(one.at).steps[one.step].place;
    let is_it = |rise: &&Rise| rise.at == one.at && rise.steps.iter().any(|step| step.place == *place);
    let foreseen = quick_rises(formula, around);
    let leaven = foreseen.iter().find(is_it).map(|rise| rise.leaven.clone()).ok_or(Untold::NothingForeseen)?;
    let mut around = around.clone();
    // How far it has risen by then with such a vigour.
    let mut times_at = |vigour: f64| -> Option<f64> {
        let lively = Learnt { middle: vigour, spread: READ, scatter: 0.0, trials: 1 };
        around.calibration.leavens.insert(leaven.clone(), lively);
        let all = quick_rises(formula, &around);
        let rise = all.iter().find(is_it)?;
        let begin = rise.steps.iter().find(|step| step.place == *place)?.lasts.from;
        let risen = |time: TimeSpan| rise.course.at(time).map(|moment| moment.risen);
        Some(risen(begin + after)? / risen(begin)?).filter(|times| times.is_finite())
    };
    let (mut slow, mut quick) = (-WIDEST, WIDEST);
    let fits = times_at(slow).is_some_and(|least| least < times) && times_at(quick).is_some_and(|most| most > times);
    if !fits {
        return Err(Untold::DoesNotFit);
    }
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(slow, quick);
        match times_at(middle) {
            Some(found) if found < times => slow = middle,
            Some(_) => quick = middle,
            None => return Err(Untold::DoesNotFit),
        }
    }
    Ok((leaven, f64::midpoint(slow, quick)))
}
