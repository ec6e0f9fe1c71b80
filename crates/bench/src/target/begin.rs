//! When to begin a preferment or dough of the stated dose, so that it is ready by the clock.

use super::dose::{find, window};
use super::yeast::begun_at;
use super::{Amount, Answer, Asked, Ready, Target, When, amount};
use crate::exchange::{Desk, Unfit};
use crate::forecast::{KnownTime, rises_until};
use formula::read::Action;
use formula::{Formula, Known, Stage};
use quantity::{Between, TimeSpan};

/// The target.
pub static TARGET: Target = Target {
    name: "begin",
    about: "when to mix a preferment or dough as it stands, so that it is ready by the clock",
    asks: "--stage; --ripe-at 07:30, or --risen-at 07:30",
    grounds: "the course of the ferment; ripe means that even a kitchen as slow as the forecast's band finds the ripe window open by then",
    fits,
    solve,
};

/// How often the hour of the beginning is held against the room it then has; a room changes little in a few minutes.
const ROUNDS: usize = 6;

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| ferments(stage)).map(|(_, stage)| stage.name.clone()).collect()
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let (ready, when): (TimeSpan, fn(TimeSpan) -> When) = match asked.ready {
        Some(Ready::RipeAt(ready)) => (ready, When::Ripe),
        Some(Ready::RisenAt(ready)) => (ready, When::Risen),
        _ => {
            return Err(Unfit::NotSaid(
                "--ripe-at or --risen-at",
                "say by the clock when it is to be ready: --ripe-at 07:30".to_owned(),
            ));
        }
    };
    let at = desk.stage("stage that ferments", |_, stage| ferments(stage))?;
    let told = when(TimeSpan::ZERO);
    let foreseen = |begun: TimeSpan| -> Result<Between<KnownTime>, Unfit> {
        let lacking = || {
            Unfit::NotSo(format!(
                "when “{}” is ready cannot be foreseen: its steps state no such condition, or it never gets there",
                desk.before.stage(at).name
            ))
        };
        window(&rises_until(desk.before, &begun_at(desk, at, begun), at), at).ok_or_else(lacking)
    };
    let mut begun = ready;
    for _ in 0..ROUNDS {
        begun = ready - told.told(&foreseen(begun)?.from);
    }
    let reached = foreseen(begun)?;
    let mut answer = Answer::default();
    // Begun so early that a slow kitchen is in time; a quick one may begin later.
    let band = reached.from.band.map(|(quick, slow)| (Amount::Clock(ready - slow), Amount::Clock(ready - quick)));
    answer.tell_known("begin at", Known { band, ..amount(&reached.from, |_| Amount::Clock(begun)) });
    if matches!(told, When::Ripe(_)) {
        let earliest = earliest(ready, begun, &foreseen)?;
        answer.tell_known("or, at the earliest, at", earliest);
    }
    answer.tell_known(if matches!(told, When::Ripe(_)) { "ripe from" } else { "risen" }, at_clock(begun, &reached.from));
    if matches!(told, When::Ripe(_)) {
        answer.tell_known("ripe until", at_clock(begun, &reached.to));
    }
    if find(desk.before, &desk.before.stage(at).name).is_some() {
        desk.minded.push("to begin at another hour, ask for the dose: solve yeast with --begun".to_owned());
    }
    Ok(answer)
}

/// The beginning with which even a quick kitchen finds the ripe window still open.
fn earliest(
    ready: TimeSpan,
    latest: TimeSpan,
    foreseen: &dyn Fn(TimeSpan) -> Result<Between<KnownTime>, Unfit>,
) -> Result<Known<Amount>, Unfit> {
    let quick = |to: &KnownTime| to.band.map_or(to.value, |(quick, _)| quick);
    let mut begun = latest;
    for _ in 0..ROUNDS {
        begun = (ready - quick(&foreseen(begun)?.to)).min(latest);
    }
    let closes = foreseen(begun)?.to;
    Ok(Known { band: None, ..amount(&closes, |_| Amount::Clock(begun)) })
}

fn ferments(stage: &Stage) -> bool {
    stage.steps.iter().any(|step| matches!(step.action, Action::Ferment | Action::Bulk | Action::Proof))
}

fn at_clock(begun: TimeSpan, after: &KnownTime) -> Known<Amount> {
    amount(after, |time| Amount::Clock(begun + time))
}
