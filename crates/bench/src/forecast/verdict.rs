//! What a waiting step wants, what is foreseen, and whether the two agree.

use super::surroundings::Stand;
use super::{KnownTime, Surroundings};
use formula::read::{Action, Attention, Condition};
use formula::{Known, Place, Step};
use quantity::{Between, Fraction, Temperature, TimeSpan};
use science::ferment::Course;
use science::numeric::dormand_prince::Ending;

/// A step with what is foreseen of it.
#[derive(Clone, Debug)]
pub struct Foreseen {
    /// Where its sentence stands.
    pub place: Place,
    /// What the step does.
    pub action: formula::read::Action,
    /// From when to when, counted from the beginning of the stretch.
    pub lasts: Between<TimeSpan>,
    /// The time that its author states.
    pub stated: Option<Between<TimeSpan>>,
    /// The condition that its author states.
    pub until: Option<Condition>,
    /// How warm the place is in which it stands, where that is not what the method asks for.
    pub stands: Option<Elsewhere>,
    /// When that condition is foreseen, counted from the step's beginning; for ripeness from when to when.
    pub reached: Option<Between<KnownTime>>,
    /// When a preferment is too weak or too sour to raise a dough, counted from the step's beginning.
    pub spent: Option<KnownTime>,
    /// How far it has risen at the step's end.
    pub risen: Known<f64>,
    /// How the two agree.
    pub verdict: Verdict,
}

/// A place other than the method asks for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elsewhere {
    /// What the method asks for.
    pub asked: Between<Temperature>,
    /// What this kitchen has.
    pub found: Temperature,
}

/// How what is stated and what is foreseen agree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// The condition is foreseen within the stated time, bands counted.
    Agrees,
    /// It is foreseen to be reached before the stated time.
    Sooner,
    /// It is foreseen to be reached after the stated time.
    Later,
    /// It is not foreseen to be reached at all.
    Never,
    /// The preferment is past its peak by then, and still fit to raise a dough.
    PastAndUsable,
    /// The same at first; before its stated time is over it is too weak or too sour.
    PastThenSpent,
    /// The preferment is too weak or too sour by then.
    Spent,
    /// The step states no condition that can be foreseen.
    NotAsked,
}

impl Verdict {
    /// The verdict in words, as it follows the figures.
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Agrees => "as the formula says",
            Self::Sooner => "sooner than the formula says",
            Self::Later => "later than the formula says",
            Self::Never => "not foreseen at all",
            Self::PastAndUsable => "past its peak by then, and still good to use",
            Self::PastThenSpent => {
                "past its peak by then, and spent before its stated time is over: too weak or too sour to raise a dough"
            }
            Self::Spent => "spent by then: too weak or too sour to raise a dough",
            Self::NotAsked => "",
        }
    }
}

/// Foresees the waiting steps of a course that a leaven raises; `ends` says when each step ends.
pub fn foresee(course: &Course, steps: &[&Step], ends: &[TimeSpan], around: &Surroundings, leaven: &str) -> Vec<Foreseen> {
    let known = |time: TimeSpan| around.calibration.time(leaven, time);
    let mut began = TimeSpan::ZERO;
    let mut foreseen = Vec::new();
    for (step, end) in steps.iter().zip(ends) {
        if step.attention == Attention::Waiting {
            foreseen.push(Foreseen {
                stands: elsewhere(step, around),
                ..one(course, step, Between { from: began, to: *end }, &known)
            });
        }
        began = *end;
    }
    foreseen
}

/// The place that a step stands in, if the method asks for another.
fn elsewhere(step: &Step, around: &Surroundings) -> Option<Elsewhere> {
    let asked = step.temperature?;
    let found = match around.stand(step) {
        Stand::Room => around.room.value,
        Stand::Place(found) => found,
    };
    let is_near = found.as_celsius() >= asked.from.as_celsius() - 0.5 && found.as_celsius() <= asked.to.as_celsius() + 0.5;
    (!is_near).then_some(Elsewhere { asked, found })
}

fn one(course: &Course, step: &Step, lasts: Between<TimeSpan>, known: &dyn Fn(TimeSpan) -> KnownTime) -> Foreseen {
    let Between { from: began, to: end } = lasts;
    let at = |time: TimeSpan| course.at(time).map_or(1.0, |moment| moment.risen);
    let (from, reached) = (at(began), at(end));
    let risen = super::by_the_ferment(reached / from);
    let since = |time: TimeSpan| known((time - began).max(TimeSpan::ZERO));
    let is_preferment = is_preferment(step);
    let (reached, verdict) = match &step.until {
        _ if is_preferment => ripe(course, step, began, &since),
        Some(Condition::RisenBy(share)) => {
            let goal = from * (Fraction::WHOLE + *share).as_ratio();
            let when = course.risen_to(goal).filter(|time| *time >= began).map(since);
            let verdict = when.as_ref().map_or(Verdict::Never, |when| compare(step, when));
            (when.map(|when| Between { from: when.clone(), to: when }), verdict)
        }
        _ => (None, Verdict::NotAsked),
    };
    Foreseen {
        place: step.place.clone(),
        action: step.action,
        lasts,
        stated: step.time,
        until: step.until.clone(),
        stands: None,
        reached,
        spent: if is_preferment { spent(course).map(since) } else { None },
        risen,
        verdict,
    }
}

/// When it is spent, if it was followed so far.
fn spent(course: &Course) -> Option<TimeSpan> {
    if course.ending() == Ending::Seen { None } else { course.spent() }
}

/// A preferment is on its way to ripeness whatever words tell it by.
pub fn is_preferment(step: &Step) -> bool {
    match &step.until {
        Some(Condition::Ripe) => true,
        None | Some(Condition::Words(_)) => step.action == Action::Ferment,
        _ => false,
    }
}

/// Ripe from when to when, and what it is when the author uses it.
fn ripe(
    course: &Course,
    step: &Step,
    began: TimeSpan,
    since: &dyn Fn(TimeSpan) -> KnownTime,
) -> (Option<Between<KnownTime>>, Verdict) {
    let Some(window) = course.ripe() else { return (None, Verdict::Never) };
    let to = window.to.unwrap_or_else(|| course.end());
    let reached = Between { from: since(window.from), to: since(to) };
    let Some(stated) = step.time else { return (Some(reached), Verdict::NotAsked) };
    let (earliest, latest) = (began + stated.from, began + stated.to);
    // A slow kitchen may need the band to be ripe in time; what a usual kitchen finds past is told so.
    let opens = reached.from.band.map_or(window.from, |(low, _)| began + low);
    let verdict = if earliest <= to && latest >= opens {
        Verdict::Agrees
    } else if latest < opens {
        Verdict::Later
    } else {
        match spent(course) {
            Some(spent) if spent <= earliest => Verdict::Spent,
            Some(spent) if spent <= latest => Verdict::PastThenSpent,
            _ => Verdict::PastAndUsable,
        }
    };
    (Some(reached), verdict)
}

/// A time with its band against the stated one.
fn compare(step: &Step, when: &KnownTime) -> Verdict {
    let Some(stated) = step.time else { return Verdict::NotAsked };
    let (low, high) = when.band.unwrap_or((when.value, when.value));
    if high < stated.from {
        Verdict::Sooner
    } else if low > stated.to {
        Verdict::Later
    } else {
        Verdict::Agrees
    }
}
