//! The batch that a bowl, or a shelf of the fridge, has room for when it has risen.

use super::{Amount, Answer, Asked, Target};
use crate::exchange::{Desk, Part, Unfit, grow, write_yield};
use crate::forecast::{FILLED, TUBS, rises, volume};
use formula::read::tin_volume;
use formula::resolve::formula::StageAt;
use formula::{Formula, Known};
use quantity::{Count, Volume, print};

/// The target.
pub static TARGET: Target = Target {
    name: "batch",
    about: "the batch that a bowl, or a shelf of the fridge, has room for when it has risen",
    asks: "--to a bowl (\"4 l\", \"round 26 x 14 cm\") or a shelf's clear room (\"50 x 30 x 18 cm\"); --count of them; --stage that must fit, else the one that takes most room",
    grounds: "the volume of the dough without gas, and the rise that is foreseen in the stated time; head room is common practice, no source",
    fits,
    solve,
};

fn fits(formula: &Formula) -> Vec<String> {
    let rooms = |(at, stage): (StageAt, &formula::Stage)| {
        (at.0 == 0 && !stage.steps.is_empty() && volume(formula, at).is_some()).then(|| stage.name.clone())
    };
    formula.stages().filter_map(rooms).collect()
}

/// A stage with the room that it takes when it stands highest, and how many times its volume without gas that is.
struct Takes {
    at: StageAt,
    room: Volume,
    risen: Known<f64>,
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let how = "such as --to \"4 l\", --to \"round 26 x 14 cm\" or --to \"50 x 30 x 18 cm\"";
    let text = asked.to.as_deref().ok_or_else(|| Unfit::NotSaid("--to, the bowl or the shelf", how.to_owned()))?;
    let holds = tin_volume(text).filter(|one| one.is_finite() && *one > Volume::millilitres(0.0));
    let holds = holds.ok_or_else(|| Unfit::NotSaid("--to, the bowl or the shelf", format!("“{text}” is neither: {how}")))?;
    let is_shelf = text.contains(['x', '×']) && !text.starts_with("round");
    let share = if is_shelf { FILLED.of(TUBS) } else { FILLED };
    let room = holds * share.as_ratio() * asked.count.unwrap_or(1.0);
    let takes = takes(desk)?;
    let (factor, pieces) = factor(desk, room / takes.room)?;
    grow(desk, factor);
    write_yield(desk, factor, 1.0, pieces.unwrap_or(1.0));
    if let Some((_, tins)) = desk.before.components[0].yields.tin {
        desk.manuscript.set_if_there(Part::Yield(0), "tins", &print::number((tins.as_pieces() * factor).round().max(1.0), 0));
    }
    let mut answer = Answer::default();
    told(desk, &takes, room, (factor, pieces), &mut answer);
    desk.minded.push(if is_shelf {
        "reckoned with tubs that take seven tenths of the shelf and are filled to nine tenths; a warm batch as large cools more slowly".to_owned()
    } else {
        "the bowl is reckoned as filled to nine tenths when it stands highest".to_owned()
    });
    Ok(answer)
}

/// The stage that is meant, or the one of the main component that takes most room.
fn takes(desk: &Desk) -> Result<Takes, Unfit> {
    let rises = rises(desk.before, desk.around);
    let one = |at: StageAt| {
        let without_gas = volume(desk.before, at)?;
        let heights = rises.iter().filter(|rise| rise.at == at).flat_map(|rise| &rise.points);
        let most = heights.map(|point| point.risen).fold(1.0, f64::max);
        let risen = Known::computed(
            most,
            "the course of the ferment",
            science::ferment::EQUATIONS.first().map_or("ferment::fermentation", |one| one.name),
        );
        Some(Takes { at, room: without_gas * most, risen })
    };
    let takes = |at: StageAt| at.0 == 0 && one(at).is_some();
    if desk.wishes.stage.is_some() || desk.wishes.of.is_some() {
        let at = desk.stage("stage of the main component that takes room in a bowl", |at, _| takes(at))?;
        return one(at).ok_or_else(|| Unfit::NotBalanced(desk.before.stage(at).name.clone()));
    }
    let all = desk.before.stages().filter(|(at, _)| at.0 == 0).filter_map(|(at, _)| one(at));
    let most = all.max_by(|a, b| a.room.as_millilitres().total_cmp(&b.room.as_millilitres()));
    most.ok_or_else(|| Unfit::Nothing { wanted: "dough in its main component".to_owned(), has: Vec::new() })
}

/// How many times as much: where pieces are counted, whole ones.
fn factor(desk: &Desk, most: f64) -> Result<(f64, Option<f64>), Unfit> {
    if !(most.is_finite() && (1e-3..=1e3).contains(&most)) {
        return Err(Unfit::NotSo("no kitchen has a bowl or a shelf of that size".to_owned()));
    }
    let Some(pieces) = desk.before.components[0].yields.pieces else { return Ok((most, None)) };
    // Just short of a whole piece by rounding alone is a whole piece.
    let whole = (pieces.as_pieces() * most + 1e-6).floor();
    if whole < 1.0 {
        return Err(Unfit::NotSo(format!("not even one {} has room there", desk.before.components[0].yields.piece.0)));
    }
    Ok((whole / pieces.as_pieces(), Some(whole)))
}

fn told(desk: &Desk, takes: &Takes, room: Volume, (factor, pieces): (f64, Option<f64>), answer: &mut Answer) {
    let stage = desk.before.stage(takes.at);
    let (by, source) = ("the volume of the dough without gas, times its rise", "the densities of the ferment's table");
    answer.tell("room there is", Amount::Volume(room), "its content, less head room", "common practice, no source");
    answer.tell_known(
        format!("{} rises to, times its volume without gas", stage.title),
        super::amount(&takes.risen, Amount::Factor),
    );
    answer.tell(format!("{} takes as it stands", stage.title), Amount::Volume(takes.room), by, source);
    answer.tell("the batch then takes", Amount::Volume(takes.room * factor), by, source);
    answer.tell("times as much", Amount::Factor(factor), "the ratio of the rooms", "arithmetic");
    if let Some(pieces) = pieces {
        answer.tell(
            format!("{} in the batch", desk.before.components[0].yields.piece.1),
            Amount::Count(Count::pieces(pieces)),
            "whole pieces",
            "arithmetic",
        );
    }
}
