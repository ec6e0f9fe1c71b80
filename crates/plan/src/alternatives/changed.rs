//! A formula changed so that it is made another way, with a dose of yeast with which that works.

use super::way::{Way, is_long_preferment};
use crate::day::span::foreseen_steps;
use bench::exchange::{Exchanged, Unfit, Wishes, exchange};
use bench::forecast::{Surroundings, Verdict, rises};
use bench::target::{Dosed, NoDose, When, yeast_for};
use formula::read::{Action, Attention, Condition, StageKind};
use formula::resolve::formula::{StageAt, Word};
use formula::{Book, Formula, Line, Stage};
use quantity::{Between, Fraction, Mass, Temperature, TimeSpan, print};

/// What is other than the formula says.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// A preferment, by its title, is mixed with the rest at once.
    MixedAtOnce(String),
    /// Part of a dough, by its title, is mixed beforehand as a preferment of that kind, with so much yeast of that title.
    Prefermented(String, StageKind, Vec<(String, Mass)>),
    /// A dough, by its title, is not kept in the fridge.
    NotRetarded(String),
    /// A dough, by its title, rises in the fridge, for so long.
    RisesCold(String, Between<TimeSpan>),
    /// A step takes another time: in which stage, which action, and how long now.
    Retimed(String, Action, Between<TimeSpan>),
    /// Another dose of yeast: in which stage, of what, before and now, and now as a share of the stage's flour.
    Dosed(String, String, Mass, Mass, Fraction),
}

/// Why a formula cannot be made that way.
#[derive(Clone, Debug, PartialEq)]
pub enum NotSo {
    /// No dough of it is raised by yeast weighed into it, so that there is nothing to dose.
    NothingToDose,
    /// It has more than one preferment to be mixed at once: their titles.
    Several(Vec<String>),
    /// No step of the dough, by its title, has an end that can be foreseen: it is not said how far it rises.
    NoRise(String),
    /// The exchange that it takes cannot be made.
    Exchange(Unfit),
    /// No dose does it.
    Dose(NoDose),
}

/// How long a preferment or a dough stands over the night: common practice, no source.
const OVERNIGHT: TimeSpan = TimeSpan::hours(12.0);
const IN_THE_FRIDGE: Between<TimeSpan> = Between { from: TimeSpan::hours(10.0), to: TimeSpan::hours(14.0) };
/// The preferments that are tried, the wettest first; a drier one takes less of a dough's water.
const PREFERMENTS: [StageKind; 3] = [StageKind::Poolish, StageKind::Sponge, StageKind::Biga];

/// Changes a formula of a book to be made another way than it is written.
pub fn changed(way: Way, book: &Book, written: &Formula, around: &Surroundings) -> Result<(Formula, Vec<Change>), NotSo> {
    let dough = dough(written).ok_or(NotSo::NothingToDose)?;
    let wanted = rising_step(written.stage(dough)).ok_or_else(|| NotSo::NoRise(written.stage(dough).title.clone()))?;
    let name = written.stage(dough).name.clone();
    let stated = written.stage(dough).steps[wanted].time;
    let (mut formula, mut changes) = match way {
        Way::Overnight => prefermented(book, written, dough, around)?,
        Way::SameDay | Way::Cold => mixed_at_once(book, written, around)?,
    };
    let is_it = |(at, stage): (StageAt, &Stage)| (at.0 == dough.0 && stage.name == name).then_some(at);
    let at = formula.stages().find_map(is_it).ok_or(NotSo::NothingToDose)?;
    let stage = &mut formula.components[at.0].stages[at.1];
    let rises = rising_step(stage).ok_or_else(|| NotSo::NoRise(stage.title.clone()))?;
    let time = if way == Way::Cold {
        rise_cold(stage, rises, around.fridge.value);
        changes.push(Change::RisesCold(stage.title.clone(), IN_THE_FRIDGE));
        IN_THE_FRIDGE
    } else {
        stage.steps[rises].time = stated;
        leave_out_retards(&mut formula, &mut changes);
        stated.unwrap_or(IN_THE_FRIDGE)
    };
    let title = formula.stage(at).title.clone();
    let doses = dose(&mut formula, at, When::Risen((time.from + time.to) * 0.5), around).map_err(NotSo::Dose)?;
    changes.extend(doses.into_iter().map(|one| Change::Dosed(title.clone(), one.title, one.stated, one.needed, one.share)));
    changes.extend(retimed(&mut formula, (at, rises), around));
    Ok((formula, changes))
}

/// The stage that yeast weighed into it raises, and that is no preferment.
fn dough(formula: &Formula) -> Option<StageAt> {
    let is_dough = |stage: &Stage| !stage.kind.is_preferment() && stage.flour > Mass::ZERO && stage.lines.iter().any(is_yeast);
    formula.stages().find(|(_, stage)| is_dough(stage)).map(|(at, _)| at)
}

pub fn is_yeast(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.yeast().is_some()) && line.mass.value > Mass::ZERO
}

/// The step of a dough that says how far it rises.
fn rising_step(stage: &Stage) -> Option<usize> {
    let rises = |until: &Option<Condition>| matches!(until, Some(Condition::RisenBy(_)));
    stage.steps.iter().position(|step| step.attention == Attention::Waiting && step.time.is_some() && rises(&step.until))
}

fn mixed_at_once(book: &Book, written: &Formula, around: &Surroundings) -> Result<(Formula, Vec<Change>), NotSo> {
    let long: Vec<&Stage> = written.stages().map(|(_, stage)| stage).filter(|stage| is_long_preferment(stage)).collect();
    match long[..] {
        [] => Ok((written.clone(), Vec::new())),
        [stage] => {
            let wishes = Wishes { of: Some(stage.name.clone()), ..Wishes::default() };
            let Exchanged { formula, .. } =
                exchange("straight", book, &written.name, around, &wishes).map_err(NotSo::Exchange)?;
            Ok((formula, vec![Change::MixedAtOnce(stage.title.clone())]))
        }
        _ => Err(NotSo::Several(long.iter().map(|stage| stage.title.clone()).collect())),
    }
}

fn prefermented(book: &Book, written: &Formula, dough: StageAt, around: &Surroundings) -> Result<(Formula, Vec<Change>), NotSo> {
    let stage = written.stage(dough);
    let mut refused = None;
    for kind in PREFERMENTS {
        let wishes = Wishes {
            of: Some(stage.name.clone()),
            into: Some(kind.word().to_owned()),
            time: Some(OVERNIGHT),
            ..Wishes::default()
        };
        match exchange("preferment", book, &written.name, around, &wishes) {
            Ok(Exchanged { formula, .. }) => {
                let new = formula.stages().map(|(_, stage)| stage).find(|stage| is_long_preferment(stage));
                let yeast = new.iter().flat_map(|new| &new.lines).filter(|line| is_yeast(line));
                let yeast = yeast.map(|line| (line.title.clone(), line.mass.value)).collect();
                return Ok((formula, vec![Change::Prefermented(stage.title.clone(), kind, yeast)]));
            }
            Err(unfit) => refused = Some(unfit),
        }
    }
    Err(refused.map_or(NotSo::NothingToDose, NotSo::Exchange))
}

/// The rise of a dough, moved into the fridge.
fn rise_cold(stage: &mut Stage, rises: usize, fridge: Temperature) {
    let step = &mut stage.steps[rises];
    step.action = Action::Retard;
    step.time = Some(IN_THE_FRIDGE);
    step.temperature = Some(Between::just(fridge));
    step.words = [Word::Text("Cover and keep in the fridge at ".into()), Word::Temperature, Word::Text(" for ".into())].into();
    step.words.extend([Word::Time, Word::Text(", ".into()), Word::Until, Word::Text(".".into())]);
}

fn leave_out_retards(formula: &mut Formula, changes: &mut Vec<Change>) {
    for stage in formula.components.iter_mut().flat_map(|component| &mut component.stages) {
        let steps = stage.steps.len();
        stage.steps.retain(|step| step.action != Action::Retard);
        if stage.steps.len() < steps {
            changes.push(Change::NotRetarded(stage.title.clone()));
        }
    }
}

/// Doses a stage so that it is ripe or has risen in that time, in its lines and where sentences name them.
pub fn dose(formula: &mut Formula, at: StageAt, when: When, around: &Surroundings) -> Result<Vec<Dosed>, NoDose> {
    let name = formula.stage(at).name.clone();
    let found = yeast_for(formula, &name, when, around)?;
    let component = &mut formula.components[at.0];
    let stage = &mut component.stages[at.1];
    let mut dosed = Vec::new();
    for (l, line) in stage.lines.iter_mut().enumerate().filter(|(_, line)| is_yeast(line)) {
        line.mass.value = line.mass.value * found.factor;
        dosed.push(l);
    }
    for step in component.stages.iter_mut().flat_map(|stage| &mut stage.steps) {
        for word in &mut step.words {
            if let Word::Line { stage, line, mass, .. } = word
                && *stage == at.1
                && dosed.contains(line)
            {
                *mass = *mass * found.factor;
            }
        }
    }
    Ok(found.lines)
}

/// How far to either side of the likely time a step's new time reaches: common practice, no source.
pub const AROUND: f64 = 0.2;

/// Gives the rises after a dough's first the time that is foreseen where what is stated no longer holds, in working
/// order, because a later rise depends on an earlier one.
pub fn retimed(formula: &mut Formula, dosed: (StageAt, usize), around: &Surroundings) -> Vec<Change> {
    let mut changes = Vec::new();
    let steps: Vec<(StageAt, usize)> = formula
        .stages()
        .filter(|(at, _)| at.0 == dosed.0.0 && at.1 >= dosed.0.1)
        .flat_map(|(at, stage)| (0..stage.steps.len()).map(move |step| (at, step)))
        .collect();
    for (at, step) in steps {
        if (at, step) == dosed || !matches!(formula.stage(at).steps[step].until, Some(Condition::RisenBy(_))) {
            continue;
        }
        let foreseen = rises(formula, around);
        let told = foreseen_steps(formula, &foreseen, at)[step];
        let Some(one) = told.filter(|one| matches!(one.verdict, Verdict::Sooner | Verdict::Later)) else { continue };
        let Some(likely) = one.reached.as_ref().map(|reached| reached.from.value) else { continue };
        let time = print::rounded_time(Between { from: likely * (1.0 - AROUND), to: likely * (1.0 + AROUND) });
        let stage = &mut formula.components[at.0].stages[at.1];
        stage.steps[step].time = Some(time);
        changes.push(Change::Retimed(stage.title.clone(), stage.steps[step].action, time));
    }
    changes
}
