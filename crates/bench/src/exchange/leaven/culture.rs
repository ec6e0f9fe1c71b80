//! From a yeasted preferment to a culture: a build that is fed with it, or ripe culture itself.

use super::{is_yeast, made_of, pass_on, plain_water, rename};
use crate::exchange::balance::grams;
use crate::exchange::desk::{Desk, named};
use crate::exchange::mentions::mention;
use crate::exchange::{Unfit, preferment, remarks};
use formula::read::{Leaven, StageKind};
use formula::resolve::formula::StageAt;
use formula::{Ingredient, Stage};
use quantity::{Fraction, Mass, print};
use std::sync::Arc;

/// How much of a build's flour the ripe culture brings where nothing is said: common practice, no source.
const SEED: Fraction = Fraction::percent(10.0);

fn wanted_culture(desk: &Desk) -> Result<Arc<Ingredient>, Unfit> {
    let cultures: Vec<&Arc<Ingredient>> = desk.book.pantry.all().filter(|one| one.leaven == Some(Leaven::Culture)).collect();
    let names: Vec<&str> = cultures.iter().map(|one| one.name.as_str()).collect();
    let how = || match names[..] {
        [] => "no culture is described yet: write one in ingredients/, with made-of and leaven = \"culture\"".to_owned(),
        _ => format!("cultures here: {}", names.join(", ")),
    };
    let wanted = match (&desk.wishes.into, &cultures[..]) {
        (Some(name), _) => desk.ingredient(name)?,
        (None, [one]) => Arc::clone(one),
        (None, _) => return Err(Unfit::NotSaid("--into, a ripe culture", how())),
    };
    if wanted.leaven == Some(Leaven::Culture) && made_of(&wanted).0 > 0.0 {
        return Ok(wanted);
    }
    Err(Unfit::NotSo(format!("“{}” is no culture of flour and water; {}", wanted.title, how())))
}

/// A yeasted preferment becomes a build of a culture.
pub fn to_culture(desk: &mut Desk, at: StageAt, stage: &Stage) -> Result<(), Unfit> {
    let culture = wanted_culture(desk)?;
    let (flour, water) = made_of(&culture);
    let seed = desk.wishes.share.unwrap_or(SEED).as_ratio();
    if !(seed > 0.0 && seed <= 1.0) {
        return Err(Unfit::NotSaid("--share above nothing and up to 100 %", "such as --share \"10 %\"".to_owned()));
    }
    let mass = stage.flour * (seed / flour);
    let is_known = |part: &Ingredient| stage.lines.iter().any(|line| line.ingredient().is_some_and(|one| one.name == part.name));
    if let Some((other, _)) = culture.singles().into_iter().find(|(part, _)| part.counts_as_flour && !is_known(part)) {
        let brought = print::mass(stage.flour * seed);
        desk.lost.push(format!("{brought}{}{}", remarks::FLOUR_OF_CULTURE, other.called));
    }
    told_of_culture(desk);
    if seed >= 1.0 {
        return ripe_into_dough(desk, at, stage, &culture, mass, water);
    }
    for line in stage.lines.iter().filter(|line| line.is_flour) {
        desk.balance.set(at, &line.name, line.mass.value * (1.0 - seed));
    }
    let had: Mass = plain_water(stage).map(|line| line.mass.value).sum();
    let wanted = desk.wishes.hydration.map_or(had, |share| stage.flour * share) - mass * water;
    if wanted < Mass::ZERO {
        return Err(Unfit::NotSo(format!("the culture alone brings more water than that: {}", print::mass(mass * water))));
    }
    let first = exchange_yeast(desk, at, stage, &culture, mass)?;
    match plain_water(stage).next() {
        Some(line) => desk.balance.set(at, &line.name, wanted),
        None => desk.change_plain_water(at, wanted, &first)?,
    }
    plain_water(stage).skip(1).for_each(|line| desk.balance.set(at, &line.name, Mass::ZERO));
    rename(desk, at, StageKind::Levain);
    pass_on(desk, at, stage.made() + stage.kept_back, had - wanted - mass * water)
}

fn told_of_culture(desk: &mut Desk) {
    desk.lost.push(remarks::ACID_COMES.to_owned());
    let rest = desk.before.lines().filter(|(_, line)| is_yeast(line)).count();
    if rest > 1 {
        desk.minded.push(remarks::YEAST_STAYS.to_owned());
    } else {
        desk.minded.push(remarks::CULTURE_ALONE.to_owned());
    }
}

/// The leaven's line changes; further yeasts go. Gives the new line's name.
fn exchange_yeast(desk: &mut Desk, at: StageAt, stage: &Stage, into: &Arc<Ingredient>, mass: Mass) -> Result<String, Unfit> {
    let mut yeasts = stage.lines.iter().filter(|line| is_yeast(line));
    let nothing = || Unfit::Nothing { wanted: "yeast in that stage".to_owned(), has: Vec::new() };
    let first = yeasts.next().ok_or_else(nothing)?;
    let names = desk.swap(at, first, &[(Arc::clone(into), mass)], &["temperature"]);
    for other in yeasts {
        drop_line(desk, at, &other.name);
    }
    Ok(names.into_iter().next().unwrap_or_default())
}

fn drop_line(desk: &mut Desk, at: StageAt, name: &str) {
    desk.manuscript.remove_line(at, name);
    desk.balance.remove(at, name);
    desk.mention_instead(at, name, |_| String::new());
}

/// Ripe culture takes the preferment's place in the dough, whose water makes up the difference.
fn ripe_into_dough(
    desk: &mut Desk,
    at: StageAt,
    stage: &Stage,
    culture: &Arc<Ingredient>,
    mass: Mass,
    water: f64,
) -> Result<(), Unfit> {
    let others =
        stage.lines.iter().find(|line| !line.is_flour && !is_yeast(line) && plain_water(stage).all(|one| one.name != line.name));
    if let Some(other) = others {
        return Err(Unfit::NotSo(format!("“{}” holds {} too, which ripe culture does not", stage.title, other.title)));
    }
    let (user, line) = preferment::only_user(desk, at)?;
    let had: Mass = plain_water(stage).map(|line| line.mass.value).sum();
    let name = desk.free_name(user, &culture.name, &line.name);
    desk.manuscript.replace_line(user, &line.name, &name, &named(&culture.name, &name, &grams(mass)), &[]);
    desk.balance.remove(user, &line.name);
    desk.balance.set(user, &name, mass);
    desk.mention_instead(user, &line.name, |part| mention(&name, part.filter(|part| *part != "name")));
    desk.change_plain_water(user, had - mass * water, &name)?;
    preferment::remove_stage(desk, at);
    Ok(())
}
