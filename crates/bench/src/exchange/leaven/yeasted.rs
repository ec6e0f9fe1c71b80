//! From a culture to a yeasted preferment, with a dose of yeast that makes it ripe when the build was.

use super::{made_of, pass_on, plain_water, rename};
use crate::exchange::balance::grams;
use crate::exchange::desk::Desk;
use crate::exchange::manuscript::Part;
use crate::exchange::mentions::{joined, mention};
use crate::exchange::preferment::{self, GUESS, Planned, dose};
use crate::exchange::{Unfit, remarks};
use formula::read::StageKind;
use formula::resolve::formula::StageAt;
use formula::{Ingredient, Line, Stage};
use quantity::{Mass, TimeSpan};
use std::sync::Arc;

/// A culture's build becomes a yeasted preferment; the culture's flour and water are weighed in instead.
pub fn to_yeast(desk: &mut Desk, at: StageAt, stage: &Stage, line: &Line) -> Result<(), Unfit> {
    let yeast = yeast(desk)?;
    let kept = if stage.kept_back > Mass::ZERO { stage.made() / (stage.made() + stage.kept_back) } else { 1.0 };
    for other in stage.lines.iter().filter(|other| other.name != line.name) {
        desk.balance.set(at, &other.name, other.mass.value * kept);
    }
    desk.manuscript.remove(Part::Stage(at), "kept-back");
    desk.mention_instead(at, "kept-back", |_| String::new());
    let culture = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    let guess = stage.flour * GUESS;
    let names = desk.swap(at, line, &[(yeast, guess)], &["temperature"]);
    give_parts(desk, at, stage, &culture, line.mass.value * kept)?;
    lost_culture(desk);
    let (flour, water) = made_of(&culture);
    let flour = (stage.flour + line.mass.value * flour) * kept;
    let had: Mass = plain_water(stage).map(|one| one.mass.value).sum();
    let had = (had + line.mass.value * water) * kept;
    let less = desk.wishes.hydration.map_or(Mass::ZERO, |wanted| had - flour * wanted);
    let beside = stage.lines.iter().find(|line| line.is_flour).map(|line| line.name.clone()).unwrap_or_default();
    desk.change_plain_water(at, -less, &beside)?;
    rename(desk, at, kind_by((had - less) / flour));
    dose(desk, &stage.name, at, &names, time_of(desk, stage))?;
    pass_on(desk, at, stage.made(), less)
}

/// Weighs in what a culture was made of: onto a line of the same, or as a line of its own.
fn give_parts(desk: &mut Desk, at: StageAt, stage: &Stage, culture: &Arc<Ingredient>, mass: Mass) -> Result<(), Unfit> {
    for (part, share) in culture.singles() {
        let more = mass * share;
        let own = stage.lines.iter().find(|line| line.ingredient().is_some_and(|one| one.name == part.name));
        match own {
            Some(line) => {
                let has = desk.balance.get(at, &line.name);
                desk.balance.set(at, &line.name, has + more);
            }
            None if part.is_water() => {
                let beside = stage.lines.iter().find(|line| line.is_flour).map(|line| line.name.clone()).unwrap_or_default();
                desk.change_plain_water(at, more, &beside)?;
            }
            None => {
                let beside = stage.lines.iter().find(|line| line.is_flour).map(|line| line.name.clone()).unwrap_or_default();
                desk.manuscript.insert_line(at, &beside, &part.name, &[("amount", &grams(more))]);
                desk.balance.set(at, &part.name, more);
                let language = desk.language();
                desk.mention_instead(at, &beside, |said| match said {
                    None => joined(&[mention(&beside, None), mention(&part.name, None)], language),
                    said => mention(&beside, said),
                });
            }
        }
    }
    Ok(())
}

/// Ripe culture in a dough becomes a yeasted preferment of the same flour and water.
pub fn from_ripe(desk: &mut Desk, at: StageAt, stage: &Stage, line: &Line) -> Result<(), Unfit> {
    let yeast = yeast(desk)?;
    let culture = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    let lines = culture.singles().into_iter().map(|(part, share)| (part, line.mass.value * share)).collect::<Vec<_>>();
    let (flour, water) = made_of(&culture);
    let kind = kind_by(water / flour);
    lost_culture(desk);
    let time = desk.wishes.time.unwrap_or(TimeSpan::hours(12.0));
    preferment::put_before(desk, at, stage, &Planned { kind, lines, yeast, time, instead_of: Some(&line.name) })
}

fn lost_culture(desk: &mut Desk) {
    desk.lost.push(remarks::ACID_GOES.to_owned());
    desk.minded.push(remarks::CULTURE_UNFED.to_owned());
}

fn yeast(desk: &Desk) -> Result<Arc<Ingredient>, Unfit> {
    let one = desk.wanted_or("yeast-instant")?;
    match one.yeast() {
        Some(_) => Ok(one),
        None => Err(Unfit::NotSo(format!("“{}” is no baker's yeast: yeast-instant, yeast-dry and yeast-fresh are", one.title))),
    }
}

/// The kind of a yeasted preferment by its hydration: the borders are common practice, no source.
fn kind_by(hydration: f64) -> StageKind {
    match hydration {
        h if h >= 0.95 => StageKind::Poolish,
        h if h >= 0.6 => StageKind::Sponge,
        _ => StageKind::Biga,
    }
}

/// How long a preferment may take: as asked, or as its steps say.
fn time_of(desk: &Desk, stage: &Stage) -> TimeSpan {
    let stated = stage.steps.iter().find(|step| step.action == formula::read::Action::Ferment).and_then(|step| step.time);
    desk.wishes.time.or(stated.map(|time| (time.from + time.to) * 0.5)).unwrap_or(TimeSpan::hours(12.0))
}

#[cfg(test)]
mod tests {
    #[test]
    fn borders_of_kinds() {
        use formula::read::StageKind;
        for (hydration, kind) in [(1.0, StageKind::Poolish), (0.65, StageKind::Sponge), (0.5, StageKind::Biga)] {
            assert_eq!(super::kind_by(hydration), kind);
        }
    }
}
