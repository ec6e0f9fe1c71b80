//! The dose of yeast with which a stage is ripe, or has risen, after a time or by the clock.

use super::dose::{find, yeast_for};
use super::{Amount, Answer, Asked, Ready, Target, When, amount};
use crate::exchange::{Desk, Part, Unfit};
use crate::forecast::{Surroundings, begins};
use formula::Known;
use formula::read::{Action, Attention, Condition};
use formula::resolve::formula::StageAt;
use formula::{Formula, Stage};
use quantity::{Mass, TimeSpan, print};

/// The target.
pub static TARGET: Target = Target {
    name: "yeast",
    about: "the dose of yeast with which a preferment is ripe, or a dough has risen, in time",
    asks: "--stage; --ripe-after \"10 h\" or --risen-after \"90 min\", or by the clock --ripe-at 07:30 or --risen-at 07:30 with --begun 21:00",
    grounds: "the course of the ferment; ripe means that even a kitchen as slow as the forecast's band finds the ripe window open by then",
    fits,
    solve,
};

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| find(formula, &stage.name).is_some()).map(|(_, stage)| stage.name.clone()).collect()
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let at = stage(desk)?;
    let name = desk.before.stage(at).name.clone();
    let (when, around) = when(desk, at, asked)?;
    let dose = yeast_for(desk.before, &name, when, &around)
        .map_err(|why| Unfit::NotSo(format!("no dose of yeast does that for “{name}”: {why}")))?;
    let mut answer = Answer::default();
    let source = science::ferment::EQUATIONS.first().map_or("ferment::fermentation", |one| one.name);
    for line in &dose.lines {
        let needed = weighable(line.needed);
        desk.balance.set(at, &line.name, needed);
        let told = |mass: f64| Amount::Mass(line.stated * mass);
        let band = Some((told(dose.band.0), told(dose.band.1)));
        let known = Known { band, ..Known::computed(Amount::Mass(needed), "the course of the ferment", source) };
        answer.tell_known(&line.title, known);
        answer.tell(
            format!("{}, of the stage's flour", line.title),
            Amount::Share(line.share),
            "the baker's arithmetic",
            "arithmetic",
        );
    }
    match when {
        When::Ripe(time) => {
            answer.tell_known("ripe from, after", amount(&dose.reached.from, Amount::Time));
            answer.tell_known("ripe until, after", amount(&dose.reached.to, Amount::Time));
            state_time(desk, at, time);
        }
        When::Risen(_) => answer.tell_known("risen after", amount(&dose.reached.from, Amount::Time)),
    }
    Ok(answer)
}

/// The one stage that is meant and that ferments by yeast weighed into it.
pub fn stage(desk: &Desk) -> Result<StageAt, Unfit> {
    desk.stage("stage that ferments by yeast weighed into it", |at, stage| find(desk.before, &stage.name) == Some(at))
}

/// How long it may take, and the kitchen at the hours in which it does.
fn when(desk: &Desk, at: StageAt, asked: &Asked) -> Result<(When, Surroundings), Unfit> {
    let begun = asked.begun.map(|begun| begun_at(desk, at, begun));
    let around = begun.unwrap_or_else(|| desk.around.clone());
    let until = |ready: TimeSpan| {
        let begun = asked.begun.ok_or_else(|| Unfit::NotSaid("--begun", "say when it is mixed: --begun 21:00".to_owned()))?;
        let hours = (ready - begun).as_hours().rem_euclid(24.0);
        // The same time on both clocks means a day.
        Ok(TimeSpan::hours(if hours == 0.0 { 24.0 } else { hours }))
    };
    let when = match asked.ready {
        Some(Ready::After(when)) => when,
        Some(Ready::RipeAt(ready)) => When::Ripe(until(ready)?),
        Some(Ready::RisenAt(ready)) => When::Risen(until(ready)?),
        None => {
            return Err(Unfit::NotSaid(
                "a time",
                "say --ripe-after \"10 h\", --risen-after \"90 min\", or --ripe-at 07:30 --begun 21:00".to_owned(),
            ));
        }
    };
    if !(when.time() > TimeSpan::ZERO && when.time() <= TimeSpan::days(4.0)) {
        return Err(Unfit::NotSo("a time above nothing and up to four days is wanted".to_owned()));
    }
    Ok((when, around))
}

/// The kitchen served so much earlier or later that a stage begins at a time of the day.
pub fn begun_at(desk: &Desk, at: StageAt, begun: TimeSpan) -> Surroundings {
    let around = desk.around;
    let late = begun - begins(desk.before, around, at);
    around.clone().with_serving_at(around.served_at.value + late)
}

/// To a thousandth of a gram below a gram, else to a hundredth: finer than any scale, and it reads well.
fn weighable(mass: Mass) -> Mass {
    let steps = if mass < Mass::grams(1.0) { 1000.0 } else { 100.0 };
    Mass::grams((mass.as_grams() * steps).round().max(1.0) / steps)
}

/// Writes the time into the step in which it ripens, where that states another one.
fn state_time(desk: &mut Desk, at: StageAt, time: TimeSpan) {
    let stage: &Stage = desk.before.stage(at);
    let ripens = |step: &formula::Step| {
        step.attention == Attention::Waiting && (step.action == Action::Ferment || step.until == Some(Condition::Ripe))
    };
    let Some(index) = stage.steps.iter().position(ripens) else { return };
    let is_stated = stage.steps[index].time.is_some_and(|stated| stated.from <= time && time <= stated.to);
    if !is_stated {
        let hours = format!("{} h", print::number(time.as_hours(), 2));
        desk.manuscript.set(Part::Step(at, index), "time", &hours, "text");
        desk.minded.push(format!("the method of “{}” now gives it {hours}", stage.title));
    }
}
