//! What has happened already when a day is planned again: the rest moves, what is done stays done.

use super::job::{Dish, Job};
use super::order::Follows;
use jiff::ZonedDateTime;

/// How far a job has come.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Progress {
    /// It is still to be planned.
    #[default]
    Open,
    /// It goes on since then.
    Begun(ZonedDateTime),
    /// It was done then.
    Done(ZonedDateTime),
}

/// A step of the day, as a baker names it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepName {
    /// The formula's name; none where the stage's name is enough.
    pub formula: Option<String>,
    /// The stage's name.
    pub stage: String,
    /// The step: its action's word, or its number counted from one.
    pub step: String,
}

impl StepName {
    /// The one job that it names.
    #[must_use]
    pub fn job(&self, dishes: &[Dish], jobs: &[Job]) -> Option<usize> {
        let fitting: Vec<usize> = (0..jobs.len()).filter(|job| fits(self, dishes, &jobs[*job])).collect();
        if let [job] = fitting[..] { Some(job) } else { None }
    }
}

/// Something that has happened, as it is told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Happened {
    /// Which step.
    pub of: StepName,
    /// Since when, or when.
    pub progress: Progress,
}

/// How far each job has come. What is done was preceded by all that it follows, and what follows it at once has begun.
///
/// # Errors
/// The one that fits no step, or more than one.
pub fn progress<'h>(
    happened: &'h [Happened],
    dishes: &[Dish],
    jobs: &[Job],
    follows: &[Follows],
) -> Result<Vec<Progress>, &'h Happened> {
    let mut all = vec![Progress::Open; jobs.len()];
    for one in happened {
        let job = one.of.job(dishes, jobs).ok_or(one)?;
        all[job] = one.progress.clone();
    }
    let told: Vec<(usize, &Progress)> = (0..jobs.len())
        .filter_map(|job| Some((job, &happened.iter().find(|one| fits(&one.of, dishes, &jobs[job]))?.progress)))
        .collect();
    for (job, progress) in &told {
        if let Progress::Begun(when) | Progress::Done(when) = progress {
            precede(*job, when, follows, &mut all);
        }
    }
    for (job, progress) in told {
        let Progress::Done(when) = progress else { continue };
        let next = follows.iter().filter(|one| one.before == job && one.is_strict).filter_map(|one| one.after);
        for next in next {
            if all[next] == Progress::Open {
                all[next] = Progress::Begun(when.clone());
            }
        }
    }
    Ok(all)
}

fn fits(one: &StepName, dishes: &[Dish], job: &Job) -> bool {
    let formula = &dishes[job.dish].formula;
    let stage = formula.stage(job.at);
    let names_step = one.step == stage.steps[job.step].action.word() || one.step == (job.step + 1).to_string();
    job.is_step() && stage.name == one.stage && names_step && one.formula.as_ref().is_none_or(|name| *name == formula.name)
}

/// Everything that a job follows was done by then, unless it is told otherwise.
fn precede(job: usize, when: &ZonedDateTime, follows: &[Follows], all: &mut [Progress]) {
    let mut way = vec![job];
    while let Some(here) = way.pop() {
        for one in follows.iter().filter(|one| one.after == Some(here)) {
            if all[one.before] == Progress::Open {
                all[one.before] = Progress::Done(when.clone());
                way.push(one.before);
            }
        }
    }
}
