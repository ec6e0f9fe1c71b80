//! The water with which the true hydration, the water of everything but flour, is what is wanted.

use super::{Amount, Answer, Asked, Target, let_pieces_follow, weighed_in};
use crate::exchange::{Desk, Unfit};
use formula::arithmetic::{figures, overall};
use formula::resolve::formula::StageAt;
use formula::{Formula, Stage};
use quantity::{Fraction, Mass, Measure, SpoonSystem, print};

/// The target.
pub static TARGET: Target = Target {
    name: "hydration",
    about: "the plain water with which true hydration, that of milk, egg and butter counted, is what is wanted",
    asks: "--to \"62 %\"; --stage whose water is free, else the last that has flour",
    grounds: "the baker's arithmetic: shares of all flour; water by the ingredient table",
    fits,
    solve,
};

/// The wettest that a batter may be asked for.
const MOST: Fraction = Fraction::percent(400.0);

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| has_flour(stage)).map(|(_, stage)| stage.name.clone()).collect()
}

fn has_flour(stage: &Stage) -> bool {
    stage.flour > Mass::ZERO
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let wanted = share(asked.to.as_deref(), "--to, the true hydration", "such as --to \"62 %\"", MOST)?;
    let at = stage(desk, asked)?;
    let whole = overall(desk.before, at.0);
    let figures = figures(&whole).ok_or_else(|| Unfit::NotSo("it has no flour, of which water could be a share".to_owned()))?;
    let used = used(desk.before, at);
    let by = whole.total_flour * (wanted - figures.true_hydration.value).as_ratio() * (1.0 / used);
    let beside = desk.before.stage(at).lines.iter().find(|line| line.is_flour).map(|line| line.name.clone()).unwrap_or_default();
    desk.change_plain_water(at, by, &beside)?;
    let_pieces_follow(desk, at.0, 1.0 + by.as_grams() * used / weighed_in(desk.before, at.0));
    let mut answer = Answer::default();
    let what = if by < Mass::ZERO { "water to be left out" } else { "water to be added" };
    answer.tell(what, Amount::Mass(by.abs()), "the baker's arithmetic", "arithmetic");
    let mut tell = |what: &str, share: Fraction| {
        answer.tell(what, Amount::Share(share), "the water of the ingredient table", "the sources of the ingredients")
    };
    tell("true hydration before", figures.true_hydration.value);
    tell("true hydration wanted", wanted);
    tell("nominal hydration then", figures.nominal_hydration + (wanted - figures.true_hydration.value));
    for lacking in &figures.true_hydration.missing {
        desk.minded.push(format!("no source gives the {} of {}: the truth is higher", lacking.figure, lacking.ingredient));
    }
    Ok(answer)
}

/// The stage whose water is free: the one that is named, or the last of the main component that has flour.
fn stage(desk: &Desk, asked: &Asked) -> Result<StageAt, Unfit> {
    let last = desk.before.stages().filter(|(at, stage)| at.0 == 0 && has_flour(stage)).map(|(at, _)| at).last();
    match (&asked.stage, last) {
        (None, Some(last)) => Ok(last),
        _ => desk.stage("stage with flour", |_, stage| has_flour(stage)),
    }
}

/// The share of a stage that goes into its component's product.
pub fn used(formula: &Formula, at: StageAt) -> f64 {
    let all = formula::arithmetic::weighed(formula, at.0);
    let one = all.iter().find(|part| part.stage == at && part.line.mass.value > Mass::ZERO);
    one.map_or(1.0, |part| part.mass / part.line.mass.value)
}

/// A share as it is written.
pub fn share(text: Option<&str>, option: &'static str, how: &str, most: Fraction) -> Result<Fraction, Unfit> {
    let Some(text) = text else { return Err(Unfit::NotSaid(option, how.to_owned())) };
    let read = text.parse::<Measure>().ok().and_then(|one| one.share(SpoonSystem::Metric)).map(|range| range.to);
    let read = read.ok_or_else(|| Unfit::NotSaid(option, format!("“{text}” is no percentage: {how}")))?;
    if read > Fraction::ZERO && read <= most {
        return Ok(read);
    }
    Err(Unfit::NotSo(format!(
        "{} is out of all custom: above nothing and up to {}",
        print::percent(read, 1),
        print::percent(most, 0)
    )))
}
