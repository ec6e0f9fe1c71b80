//! The times of a changed formula: what its steps state is held against the forecast, and written anew where
//! it would no longer hold.

use super::Unfit;
use super::balance::sound;
use super::desk::Desk;
use super::manuscript::Part;
use crate::forecast::{Foreseen, Verdict, rises};
use formula::read::{Attention, Condition};
use formula::resolve::formula::StageAt;
use formula::{Formula, Origin};
use quantity::{Between, TimeSpan};

/// A step whose time is new.
#[derive(Clone, Debug, PartialEq)]
pub struct NewTime {
    /// The stage's title.
    pub stage: String,
    /// What the step does.
    pub action: formula::read::Action,
    /// What the text said.
    pub before: Option<Between<TimeSpan>>,
    /// What it says now.
    pub after: Between<TimeSpan>,
    /// Where that comes from.
    pub origin: Origin,
}

/// How far from the middle a dough's stated time reaches to either side: common practice, no source. The
/// forecast's own band is wider, and is told beside.
const AROUND: f64 = 0.2;
/// How far a rise must have moved, as a share, for its stated time to move: common practice, no source.
const NOTICED: f64 = 0.15;

/// Writes the times that no longer hold, in working order, because a later rise depends on an earlier one.
pub fn settle(desk: &mut Desk, mut formula: Formula) -> Result<(Vec<NewTime>, Formula), Unfit> {
    let before = foreseen(desk, desk.before);
    let mut new = Vec::new();
    let mut now = foreseen(desk, &formula);
    for step in 0.. {
        let Some((at, index, one)) = now.get(step) else { return Ok((new, formula)) };
        let stage = formula.stage(*at);
        let was = before
            .iter()
            .find(|(old, i, other)| desk.before.stage(*old).name == stage.name && i == index && other.action == one.action);
        // What the author knew better before is left alone as long as it is the same.
        let is_as_before = was.is_some_and(|(.., was)| was.verdict == one.verdict && is_near(was, one));
        let time = was
            .and_then(|(.., was)| moved(was, one))
            .or_else(|| wanted(one).filter(|_| one.verdict != Verdict::Agrees && !is_as_before));
        let Some(time) = time else { continue };
        let by_time = one.reached.as_ref().map_or_else(|| one.risen.origin.clone(), |reached| reached.from.origin.clone());
        // What trials taught, they taught of the same course.
        desk.rest_on(one.risen.origin.clone());
        desk.rest_on(by_time.clone());
        new.push(NewTime { stage: stage.title.clone(), action: one.action, before: one.stated, after: time, origin: by_time });
        let (at, index) = (*at, *index);
        desk.manuscript.set(Part::Step(at, index), "time", &written(time), "text");
        formula = sound(desk.work_out(&desk.manuscript.text))?;
        now = foreseen(desk, &formula);
    }
    Ok((new, formula))
}

/// What is foreseen of each waiting step: its stage, its place among the stage's steps.
fn foreseen(desk: &Desk, formula: &Formula) -> Vec<(StageAt, usize, Foreseen)> {
    let mut told: Vec<(StageAt, usize, Foreseen)> = Vec::new();
    for rise in rises(formula, desk.around) {
        let stage = formula.stage(rise.at);
        let mut steps = rise.steps.into_iter().peekable();
        for (index, step) in stage.steps.iter().enumerate() {
            let is_told = told.iter().any(|(at, i, _)| *at == rise.at && *i == index);
            let is_next = steps.peek().is_some_and(|one| one.action == step.action && one.until == step.until);
            if step.attention == Attention::Waiting && !is_told && is_next {
                told.extend(steps.next().map(|one| (rise.at, index, one)));
            }
        }
    }
    told
}

/// Whether a step is foreseen at nearly the same time as it was.
fn is_near(was: &Foreseen, one: &Foreseen) -> bool {
    match (&was.reached, &one.reached) {
        (Some(was), Some(one)) => (one.from.value - was.from.value).abs() <= was.from.value * 0.1,
        (None, None) => true,
        _ => false,
    }
}

/// A dough's time as its author states it, so much longer or shorter as the forecast moved: the author's own
/// figure knows the kitchen better than the forecast does. None where it moved by less than is noticed.
fn moved(was: &Foreseen, one: &Foreseen) -> Option<Between<TimeSpan>> {
    if !matches!(one.until, Some(Condition::RisenBy(_))) || was.verdict != Verdict::Agrees {
        return None;
    }
    let ratio = one.reached.as_ref()?.from.value / was.reached.as_ref()?.from.value;
    let is_noticed = ratio.is_finite() && (ratio - 1.0).abs() > NOTICED;
    was.stated.filter(|_| is_noticed).map(|stated| rounded(stated.map(|time| time * ratio)))
}

/// The time that a step would have to state.
fn wanted(one: &Foreseen) -> Option<Between<TimeSpan>> {
    let reached = one.reached.as_ref()?;
    let (from, to) = (reached.from.value, reached.to.value);
    let range = match one.until {
        Some(Condition::RisenBy(_)) => Between { from: from * (1.0 - AROUND), to: from * (1.0 + AROUND) },
        _ => Between { from, to },
    };
    Some(rounded(range))
}

/// To five minutes, or to the hour from five hours on.
fn rounded(range: Between<TimeSpan>) -> Between<TimeSpan> {
    let step = if range.to >= TimeSpan::hours(5.0) { 60.0 } else { 5.0 };
    range.map(|time| TimeSpan::minutes(((time.as_minutes() / step).round() * step).max(step)))
}

/// A time as the document writes it: "7-11 h", "65-95 min".
fn written(time: Between<TimeSpan>) -> String {
    let (from, to) = (time.from.as_minutes(), time.to.as_minutes());
    let (size, unit) = if (from % 60.0, to % 60.0) == (0.0, 0.0) { (60.0, "h") } else { (1.0, "min") };
    let (from, to) = ((from / size).round(), (to / size).round());
    if from < to { format!("{from}-{to} {unit}") } else { format!("{to} {unit}") }
}
