//! What trials taught: before and after, how sure, which trial is out of line.

use super::fit::fitted;
use super::knowledge::{Evidence, OUT_OF_LINE, strangeness, taught, without};
use super::observation::{Observation, Outlook, What, observations};
use super::{Logged, Parameter};
use crate::forecast::{Calibration, Learnt};

/// What trials taught.
#[derive(Debug)]
pub struct Lessons {
    /// What the forecast reads.
    pub calibration: Calibration,
    /// Each figure that something was seen of.
    pub lessons: Vec<Lesson>,
    /// Each trial, with what was seen and foreseen.
    pub trials: Vec<Seen>,
}

/// What was learnt of one figure.
#[derive(Clone, Debug)]
pub struct Lesson {
    /// The figure.
    pub parameter: Parameter,
    /// What was known before any trial.
    pub before: Learnt,
    /// What is known now.
    pub after: Learnt,
    /// What each trial says of it.
    pub evidence: Vec<Evidence>,
}

/// A trial with what was seen and foreseen.
#[derive(Clone, Debug)]
pub struct Seen {
    /// Why nothing was learnt from it, where its author says so.
    pub left_out: Option<String>,
    /// The figures.
    pub figures: Vec<Compared>,
    /// How many readings tell nothing: taken before a clear rise or past the peak.
    pub untold: usize,
}

/// A figure that was seen, beside what is foreseen of it.
#[derive(Clone, Debug)]
pub struct Compared {
    /// What was seen.
    pub seen: Observation,
    /// By the books.
    pub before: Option<f64>,
    /// With what all trials taught.
    pub after: Option<f64>,
    /// With what the trials before it had taught: what was foreseen on that day.
    pub then: Option<f64>,
    /// With what the other trials taught, if there are others.
    pub apart: Option<f64>,
}

/// How far off forecasts were: the root mean square, as a logarithm or in kelvin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Errors {
    /// How many figures.
    pub count: usize,
    /// By the books.
    pub before: f64,
    /// With what all trials taught.
    pub after: f64,
    /// Each trial with what only the others taught; none with fewer than two.
    pub apart: Option<f64>,
}

/// Learns from trials of one kitchen.
#[must_use]
pub fn learn(logged: &[Logged]) -> Lessons {
    let books = Calibration::default();
    let seen: Vec<(Vec<Observation>, usize)> = logged.iter().map(observations).collect();
    let mut said: Vec<(Parameter, Evidence)> = Vec::new();
    for (trial, (one, (figures, _))) in logged.iter().zip(&seen).enumerate() {
        if one.trial.left_out.is_none() {
            said.extend(said_by(one, trial, figures, &books));
        }
    }
    let mut parameters: Vec<Parameter> = said.iter().map(|(parameter, _)| parameter.clone()).collect();
    parameters.sort();
    parameters.dedup();
    let lessons: Vec<Lesson> = parameters.into_iter().map(|parameter| lesson(parameter, &said, &books)).collect();
    let calibration = all_but(None, &lessons, &books);
    let trials = (0..logged.len()).map(|trial| compare(trial, &logged[trial], &seen[trial], &lessons, &calibration)).collect();
    Lessons { calibration, lessons, trials }
}

/// What a trial says by itself of every figure it tells of. What it says of the lag is taken for the path that its
/// rises went.
fn said_by(logged: &Logged, trial: usize, figures: &[Observation], books: &Calibration) -> Vec<(Parameter, Evidence)> {
    let mut said = Vec::new();
    let mut known = books.clone();
    let leavens = leavens(&Outlook::of(logged, books), figures);
    let parameters = [Parameter::Lag].into_iter().chain(leavens).chain([Parameter::Friction, Parameter::Contact]);
    for parameter in parameters {
        if let Some(evidence) = fitted(logged, trial, &parameter, figures, &known) {
            let own = taught(parameter.of(books), &[evidence]);
            known = parameter.set(&known, own.middle);
            said.push((parameter, evidence));
        }
    }
    said
}

/// The leavens of what was seen to rise, in the order in which they come.
fn leavens(outlook: &Outlook, figures: &[Observation]) -> Vec<Parameter> {
    let mut leavens: Vec<Parameter> = Vec::new();
    for one in figures {
        let leaven = outlook.leaven(one).filter(|leaven| !leaven.is_empty()).map(|leaven| Parameter::Vigour(leaven.to_owned()));
        leavens.extend(leaven.filter(|leaven| !leavens.contains(leaven)));
    }
    leavens
}

fn lesson(parameter: Parameter, said: &[(Parameter, Evidence)], books: &Calibration) -> Lesson {
    let evidence: Vec<Evidence> = said.iter().filter(|(of, _)| *of == parameter).map(|(_, evidence)| *evidence).collect();
    let before = parameter.of(books).clone();
    Lesson { after: taught(&before, &evidence), before, evidence, parameter }
}

/// What all trials taught, or all but one.
fn all_but(trial: Option<usize>, lessons: &[Lesson], books: &Calibration) -> Calibration {
    lessons.iter().fold(books.clone(), |known, lesson| {
        let evidence = trial.map_or_else(|| lesson.evidence.clone(), |trial| without(&lesson.evidence, trial));
        if evidence.is_empty() { known } else { lesson.parameter.know(&known, taught(&lesson.before, &evidence)) }
    })
}

/// What had been taught before a trial was baked.
fn before_that(trial: usize, lessons: &[Lesson], books: &Calibration) -> Calibration {
    lessons.iter().fold(books.clone(), |known, lesson| match lesson.until(trial) {
        Some(learnt) => lesson.parameter.know(&known, learnt),
        None => known,
    })
}

fn compare(
    trial: usize,
    logged: &Logged,
    (figures, untold): &(Vec<Observation>, usize),
    lessons: &[Lesson],
    calibration: &Calibration,
) -> Seen {
    let books = Calibration::default();
    let earlier = before_that(trial, lessons, &books);
    let others = lessons.iter().flat_map(|lesson| &lesson.evidence).any(|evidence| evidence.trial != trial);
    let before = Outlook::of(logged, &books);
    let after = Outlook::of(logged, calibration);
    let then = (earlier != books).then(|| Outlook::of(logged, &earlier));
    let apart = others.then(|| Outlook::of(logged, &all_but(Some(trial), lessons, &books)));
    let one = |seen: &Observation| Compared {
        seen: seen.clone(),
        before: before.foreseen(seen),
        after: after.foreseen(seen),
        then: then.as_ref().unwrap_or(&before).foreseen(seen),
        apart: apart.as_ref().and_then(|apart| apart.foreseen(seen)),
    };
    Seen { left_out: logged.trial.left_out.clone(), figures: figures.iter().map(one).collect(), untold: *untold }
}

impl Lesson {
    /// What was known of the figure before a trial; nothing where none had told of it.
    #[must_use]
    pub fn until(&self, trial: usize) -> Option<Learnt> {
        let earlier: Vec<Evidence> = self.evidence.iter().filter(|one| one.trial < trial).copied().collect();
        (!earlier.is_empty()).then(|| taught(&self.before, &earlier))
    }

    /// What a trial made of it: known before and after, where it told of it.
    #[must_use]
    pub fn step(&self, trial: usize) -> Option<(Learnt, Learnt)> {
        self.evidence.iter().find(|one| one.trial == trial)?;
        Some((self.until(trial).unwrap_or_else(|| self.before.clone()), self.until(trial + 1)?))
    }

    /// The trials that lie out of line with the rest, each with how many standard deviations.
    pub fn out_of_line(&self) -> impl Iterator<Item = (usize, f64)> {
        let strange = |which: usize| strangeness(&self.before, &self.evidence, which);
        let all = self.evidence.iter().enumerate().map(move |(which, one)| (one.trial, strange(which)));
        all.filter(|(_, apart)| apart.abs() > OUT_OF_LINE)
    }
}

impl Lessons {
    /// How far off forecasts of one kind of figure were, over the trials that count; none where none was seen.
    #[must_use]
    pub fn errors(&self, what: What) -> Option<Errors> {
        let counted = self.trials.iter().filter(|trial| trial.left_out.is_none()).flat_map(|trial| &trial.figures);
        let figures: Vec<&Compared> = counted.filter(|one| one.seen.what == what).collect();
        let rms = |of: &dyn Fn(&Compared) -> Option<f64>| {
            let off: Vec<f64> = figures.iter().filter_map(|one| Some(what.off(of(one)?, one.seen.seen))).collect();
            (!off.is_empty()).then(|| (off.iter().map(|one| one * one).sum::<f64>() / off.len() as f64).sqrt())
        };
        Some(Errors {
            count: figures.len(),
            before: rms(&|one| one.before)?,
            after: rms(&|one| one.after)?,
            apart: rms(&|one| one.apart),
        })
    }
}
