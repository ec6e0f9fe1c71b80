//! What was seen of a ferment while it goes on, and the day foreseen anew from it.

use super::happened::{Progress, StepName};
use super::job::{Dish, Job};
use super::timeline::Refusal;
use bench::calibration::{Observed, Saw, Untold, foreseen_anew};
use bench::forecast::Surroundings;
use jiff::ZonedDateTime;
use quantity::{Fraction, Temperature, TimeSpan};

/// Something that was seen, as it is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// At which step.
    pub of: StepName,
    /// What.
    pub what: What,
}

/// What was seen.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// How warm it came from the bowl, or how warm it is where it stands.
    Warm(Temperature),
    /// Risen by that share of what it was when the step began, at that time.
    Risen(Fraction, ZonedDateTime),
}

/// What came of something that was seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Learnt {
    /// What it was.
    pub seen: Seen,
    /// The job it was seen at.
    pub job: usize,
}

/// Why something that was seen cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unused {
    /// It is not told since when the step goes on.
    NotBegun,
    /// It was seen before the step began, or is still to come.
    NotThen,
    /// It teaches nothing.
    Untold(Untold),
}

/// Foresees the dishes anew; gives at which job each thing was seen.
///
/// # Errors
/// Tells what cannot be used and why; what fits no job, or more than one, by its name.
pub fn foresee_anew(
    seen: &[Seen],
    (dishes, jobs): (&mut [Dish], &[Job]),
    (progress, now): (&[Progress], &ZonedDateTime),
    around: &Surroundings,
) -> Result<Vec<Learnt>, Refusal> {
    let mut told = Vec::new();
    for one in seen {
        let job = one.of.job(dishes, jobs).ok_or_else(|| Refusal::Unknown(one.of.clone()))?;
        let saw = saw(&one.what, &progress[job], now).map_err(|why| Refusal::Unused(Box::new(one.clone()), why))?;
        told.push((Learnt { seen: one.clone(), job }, saw));
    }
    for (number, dish) in dishes.iter_mut().enumerate() {
        let own: Vec<&(Learnt, Saw)> = told.iter().filter(|(learnt, _)| jobs[learnt.job].dish == number).collect();
        if own.is_empty() {
            continue;
        }
        let observed: Vec<Observed> = own
            .iter()
            .map(|(learnt, saw)| Observed { at: jobs[learnt.job].at, step: jobs[learnt.job].step, saw: *saw })
            .collect();
        let rises = foreseen_anew(&dish.formula, around, &observed);
        let rises = rises.map_err(|(at, why)| Refusal::Unused(Box::new(own[at].0.seen.clone()), Unused::Untold(why)))?;
        dish.rises = rises.into();
        dish.seen = observed.iter().map(|one| one.at).collect();
    }
    Ok(told.into_iter().map(|(learnt, _)| learnt).collect())
}

fn saw(what: &What, progress: &Progress, now: &ZonedDateTime) -> Result<Saw, Unused> {
    match what {
        What::Warm(temperature) => Ok(Saw::Warm(*temperature)),
        What::Risen(by, when) => {
            let Progress::Begun(begun) = progress else { return Err(Unused::NotBegun) };
            if when <= begun || when > now {
                return Err(Unused::NotThen);
            }
            let after = TimeSpan::seconds(when.timestamp().duration_since(begun.timestamp()).as_secs_f64());
            Ok(Saw::Risen { after, times: 1.0 + by.as_ratio() })
        }
    }
}
