//! How long a step takes: as it is foreseen in this kitchen, or else as the formula states it.

use crate::hours::lasts;
use bench::forecast::{Foreseen, Rise, Verdict};
use formula::read::{Action, Attention, Condition};
use formula::resolve::formula::StageAt;
use formula::{Component, Formula, Step};
use quantity::{Between, TimeSpan};

/// How long a step may take, and how long what it made may then stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// In a quick kitchen, or on a quick day.
    pub early: TimeSpan,
    /// What is planned with.
    pub likely: TimeSpan,
    /// In a slow one.
    pub late: TimeSpan,
    /// How long beyond the likely time it may go on and still be good.
    pub leeway: TimeSpan,
    /// Where the figure comes from.
    pub from: Told,
}

impl Span {
    /// A time that no formula states and nothing foresees.
    #[must_use]
    pub const fn assumed(time: TimeSpan) -> Self {
        Self { early: time, likely: time, late: time, leeway: time, from: Told::Assumed }
    }

    /// The same for what is done so many times over.
    #[must_use]
    pub fn times(self, loads: u32) -> Self {
        let loads = f64::from(loads);
        Self { early: self.early * loads, likely: self.likely * loads, late: self.late * loads, ..self }
    }
}

/// Where a step's time comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Told {
    /// The forecast for this kitchen.
    Foreseen,
    /// The formula.
    Stated,
    /// Nobody: the formula states no time.
    Assumed,
}

/// What a step without a time is given: common practice, no source.
const UNTIMED_WORK: TimeSpan = TimeSpan::minutes(5.0);
const UNTIMED_WAIT: TimeSpan = TimeSpan::minutes(30.0);
/// How long a risen dough may stand before it is the worse for it: common practice, no source.
const RISEN_STANDS: TimeSpan = TimeSpan::minutes(10.0);

/// What is foreseen of a stage's steps, one for each step where there is something.
#[must_use]
pub fn foreseen_steps<'f>(formula: &Formula, rises: &'f [Rise], at: StageAt) -> Vec<Option<&'f Foreseen>> {
    let mut told = rises.iter().filter(|rise| rise.at == at).flat_map(|rise| &rise.steps).peekable();
    let steps = formula.stage(at).steps.iter();
    steps
        .map(|step| {
            let is_next = |one: &&&Foreseen| one.action == step.action && one.stated == step.time;
            let waits = step.attention == Attention::Waiting;
            if waits && told.peek().as_ref().is_some_and(is_next) { told.next() } else { None }
        })
        .collect()
}

/// How long a step of a component takes; what was seen of its dish goes before what is stated.
#[must_use]
pub fn span(component: &Component, step: &Step, foreseen: Option<&Foreseen>, is_seen: bool) -> Span {
    let Some(stated) = lasts(component, step) else { return untimed(step) };
    let is_window = matches!(step.action, Action::Ferment | Action::Retard);
    let Some((reached, verdict)) = foreseen.and_then(|one| Some((one.reached.as_ref()?, one.verdict))) else {
        return as_stated(step, stated, is_window);
    };
    let (opens, closes) = (reached.from.value, reached.to.value);
    if matches!(step.until, Some(Condition::RisenBy(_))) {
        let likely = if verdict == Verdict::Agrees && !is_seen { opens.max(stated.from).min(stated.to) } else { opens };
        let (early, late) = reached.from.band.unwrap_or((likely, likely));
        let leeway = (stated.to - likely).max(RISEN_STANDS);
        return Span { early: early.min(likely), likely, late: late.max(likely), leeway, from: Told::Foreseen };
    }
    match verdict {
        // The author uses it past its peak and says so; what is stated then goes.
        Verdict::PastAndUsable => as_stated(step, stated, true),
        Verdict::PastThenSpent => {
            let spent = foreseen.and_then(|one| one.spent.as_ref()).map_or(stated.to, |spent| spent.value);
            as_stated(step, Between { to: stated.to.min(spent), ..stated }, true)
        }
        _ => {
            let (from, to) = (opens.max(stated.from), closes.min(stated.to));
            let (from, to) = if from <= to { (from, to) } else { (opens, closes) };
            Span { early: opens.min(from), likely: from, late: to, leeway: to - from, from: Told::Foreseen }
        }
    }
}

fn as_stated(step: &Step, stated: Between<TimeSpan>, is_window: bool) -> Span {
    let (early, late) = (stated.from, stated.to);
    let middle = (early + late) * 0.5;
    let told = Span { early, likely: middle, late, leeway: TimeSpan::ZERO, from: Told::Stated };
    match step.action {
        _ if is_window => Span { likely: early, leeway: late - early, ..told },
        Action::Hold | Action::Store => Span { likely: early, leeway: late - early, ..told },
        Action::Rest | Action::Chill | Action::Soak => Span { likely: early, ..told },
        Action::Bulk | Action::Proof => Span { leeway: (late - middle).max(RISEN_STANDS), ..told },
        _ => told,
    }
}

fn untimed(step: &Step) -> Span {
    let likely = if step.attention == Attention::Active { UNTIMED_WORK } else { UNTIMED_WAIT };
    Span { early: likely, likely, late: likely, leeway: TimeSpan::ZERO, from: Told::Assumed }
}
