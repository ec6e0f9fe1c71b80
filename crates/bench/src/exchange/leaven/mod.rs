//! A yeasted preferment for a ripe culture, and back: the flour, the water and what is prefermented stay.

mod culture;
mod yeasted;

use super::desk::{Desk, is_product_of};
use super::manuscript::Part;
use super::{Exchange, Unfit, only, those};
use formula::read::{Leaven, StageKind};
use formula::resolve::formula::StageAt;
use formula::{Formula, Ingredient, Line, Pantry, Stage};
use quantity::{Fraction, Mass};
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "leaven",
    about: "a yeasted preferment for a ripe culture, or a culture's build for a yeasted preferment",
    asks: "--of the preferment, --into a culture or a yeast; --hydration of the build, --share of its flour that the ripe culture brings (10 %; at 100 % the culture goes straight into the dough)",
    grounds: "a culture is counted as its flour and water; doses and times by the course of the ferment; the share of seed is common practice, no source",
    fits,
    offers,
    make,
};

fn offers(formula: &Formula, pantry: &Pantry) -> Vec<String> {
    let has_culture = formula.stages().any(|(_, stage)| culture(stage).is_some());
    let has_yeasted = formula.stages().any(|(_, stage)| is_yeasted(stage));
    let cultures = only(has_yeasted, those(pantry, |one| one.leaven == Some(Leaven::Culture)));
    [cultures, only(has_culture, those(pantry, |one| one.yeast().is_some()))].concat()
}

fn fits(formula: &Formula) -> Vec<String> {
    formula
        .stages()
        .filter(|(_, stage)| is_yeasted(stage) || culture(stage).is_some())
        .map(|(_, stage)| stage.name.clone())
        .collect()
}

/// Whether a stage is a preferment that yeast raises.
#[must_use]
pub fn is_yeasted(stage: &Stage) -> bool {
    stage.kind.is_preferment() && stage.flour > Mass::ZERO && stage.lines.iter().any(is_yeast)
}

fn is_yeast(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.yeast().is_some())
}

/// Whether a stage is a preferment that is a culture's build.
#[must_use]
pub fn is_culture_build(stage: &Stage) -> bool {
    stage.kind.is_preferment() && culture(stage).is_some()
}

fn culture(stage: &Stage) -> Option<&Line> {
    stage.lines.iter().find(|line| line.ingredient().is_some_and(|one| one.leaven == Some(Leaven::Culture)))
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let at = desk.stage("preferment with yeast or culture in it", |_, stage| is_yeasted(stage) || culture(stage).is_some())?;
    let stage = desk.before.stage(at);
    if stage.boil_off > Fraction::ZERO || stage.loss > Fraction::ZERO {
        return Err(Unfit::NotSo(format!("“{}” loses something on its way, so that it is no plain preferment", stage.title)));
    }
    desk.rest_on(crate::grounds::by::DOSE.known(()).origin);
    match culture(stage) {
        None => culture::to_culture(desk, at, stage),
        Some(line) if stage.kind.is_preferment() => yeasted::to_yeast(desk, at, stage, line),
        Some(line) => yeasted::from_ripe(desk, at, stage, line),
    }
}

/// What a ripe culture is made of: its flour and its water, as shares of it.
fn made_of(one: &Arc<Ingredient>) -> (f64, f64) {
    let (mut flour, mut water) = (0.0, 0.0);
    for (part, share) in one.singles() {
        let share = share.as_ratio();
        if part.counts_as_flour {
            flour += share;
        } else if part.is_water() {
            water += share;
        }
    }
    (flour, water)
}

fn plain_water(stage: &Stage) -> impl Iterator<Item = &Line> {
    stage.lines.iter().filter(|line| line.ingredient().is_some_and(|one| one.is_water()))
}

/// The stage's kind, what its wait is for, and the word in its title.
fn rename(desk: &mut Desk, at: StageAt, kind: StageKind) {
    desk.manuscript.set(Part::Stage(at), "kind", kind.word(), "name");
    for (index, step) in desk.before.stage(at).steps.iter().enumerate() {
        if step.action == formula::read::Action::Ferment && step.until.is_some() {
            desk.manuscript.set(Part::Step(at, index), "until", "ripe", "text");
        }
    }
}

/// The stages that use a preferment use the same part of it as before: a weight stated for it follows, and they
/// make up for the water that it brings less. `before` is what the preferment weighed in all.
fn pass_on(desk: &mut Desk, at: StageAt, before: Mass, less: Mass) -> Result<(), Unfit> {
    let now = desk.balance.stage(at);
    let users: Vec<(StageAt, &Line)> = desk.before.lines().filter(|(_, line)| is_product_of(line, at)).collect();
    for (user, line) in users {
        let share = line.mass.value / before;
        if desk.balance.get(user, &line.name) > Mass::ZERO {
            desk.balance.set(user, &line.name, now * share);
        }
        desk.change_plain_water(user, less * share, &line.name)?;
    }
    Ok(())
}
