//! A yeasted preferment for a ripe culture, and back: the flour, the water and what is prefermented stay.

use super::balance::grams;
use super::desk::{Desk, named};
use super::manuscript::Part;
use super::mentions::mention;
use super::preferment::{self, dose};
use super::{Exchange, Unfit};
use formula::read::{Leaven, StageKind};
use formula::resolve::formula::StageAt;
use formula::{Formula, Ingredient, Line, Stage};
use quantity::{Fraction, Mass, TimeSpan, print};
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "leaven",
    about: "a yeasted preferment for a ripe culture, or a culture's build for a yeasted preferment",
    asks: "--of the preferment, --into a culture or a yeast; --hydration of the build, --share of its flour that the ripe culture brings (10 %; at 100 % the culture goes straight into the dough)",
    fits,
    make,
};

/// How much of a build's flour the ripe culture brings where nothing is said: common practice, no source.
const SEED: Fraction = Fraction::percent(10.0);

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| is_yeasted(stage) || culture(stage).is_some()).map(|(_, stage)| stage.name.clone()).collect()
}

/// Whether a stage is a preferment that yeast raises.
pub fn is_yeasted(stage: &Stage) -> bool {
    stage.kind.is_preferment() && stage.flour > Mass::ZERO && stage.lines.iter().any(is_yeast)
}

fn is_yeast(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.yeast().is_some())
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
    match culture(stage) {
        None => to_culture(desk, at, stage),
        Some(line) if stage.kind.is_preferment() => to_yeast(desk, at, stage, line),
        Some(line) => from_ripe(desk, at, stage, line),
    }
}

/// What a ripe culture is made of: its flour and its water, as shares of it.
fn made_of(one: &Arc<Ingredient>) -> (f64, f64) {
    let (mut flour, mut water) = (0.0, 0.0);
    for (part, share) in one.singles() {
        let share = share.as_ratio();
        if part.counts_as_flour { flour += share } else if part.is_water() { water += share }
    }
    (flour, water)
}

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

fn to_culture(desk: &mut Desk, at: StageAt, stage: &Stage) -> Result<(), Unfit> {
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
        desk.lost.push(format!("{brought} of the flour is now the culture's own: {}", other.called));
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
    let (first, _) = exchange_yeast(desk, at, stage, &culture, mass)?;
    match plain_water(stage).next() {
        Some(line) => desk.balance.set(at, &line.name, wanted),
        None => desk.change_plain_water(at, wanted, &first)?,
    }
    plain_water(stage).skip(1).for_each(|line| desk.balance.set(at, &line.name, Mass::ZERO));
    pass_water_on(desk, at, stage, had - wanted - mass * water)?;
    rename(desk, at, StageKind::Levain);
    Ok(())
}

fn told_of_culture(desk: &mut Desk) {
    desk.lost.push("acid: a culture sours the crumb, and keeps it longer; a yeasted preferment does not".to_owned());
    let rest = desk.before.lines().filter(|(_, line)| is_yeast(line)).count();
    if rest > 1 {
        desk.minded.push("the dough keeps its own yeast, which still does most of the raising".to_owned());
    } else {
        desk.minded.push("the culture alone raises the dough now: take it when it is ripe, not by the clock".to_owned());
    }
}

fn plain_water(stage: &Stage) -> impl Iterator<Item = &Line> {
    stage.lines.iter().filter(|line| line.ingredient().is_some_and(|one| one.is_water()))
}

/// The leaven's line changes; further yeasts go. Gives the new line's name.
fn exchange_yeast(desk: &mut Desk, at: StageAt, stage: &Stage, into: &Arc<Ingredient>, mass: Mass) -> Result<(String, Mass), Unfit> {
    let mut yeasts = stage.lines.iter().filter(|line| is_yeast(line));
    let nothing = || Unfit::Nothing { wanted: "yeast in that stage".to_owned(), has: Vec::new() };
    let first = yeasts.next().ok_or_else(nothing)?;
    let names = desk.swap(at, first, &[(Arc::clone(into), mass)], &["temperature"]);
    for other in yeasts {
        drop_line(desk, at, &other.name);
    }
    Ok((names.into_iter().next().unwrap_or_default(), first.mass.value))
}

fn drop_line(desk: &mut Desk, at: StageAt, name: &str) {
    desk.manuscript.remove_line(at, name);
    desk.balance.remove(at, name);
    desk.mention_instead(at, name, |_| String::new());
}

/// What a preferment no longer brings of water, or brings more, the stages that use it make up for.
fn pass_water_on(desk: &mut Desk, at: StageAt, stage: &Stage, less: Mass) -> Result<(), Unfit> {
    let yeast: Mass = stage.lines.iter().filter(|line| is_yeast(line)).map(|line| line.mass.value).sum();
    let (before, whole) = (stage.made() + stage.kept_back, stage.mixed() - less - yeast);
    let users: Vec<(StageAt, &Line)> = desk.before.lines().filter(|(_, line)| super::desk::is_product_of(line, at)).collect();
    for (user, line) in users {
        let share = line.mass.value / before;
        // The share that is used stays; only a weight stated for it follows.
        if desk.balance.get(user, &line.name) > Mass::ZERO {
            desk.balance.set(user, &line.name, whole * share);
        }
        desk.change_plain_water(user, less * share, &line.name)?;
    }
    Ok(())
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

/// Ripe culture takes the preferment's place in the dough, whose water makes up the difference.
fn ripe_into_dough(desk: &mut Desk, at: StageAt, stage: &Stage, culture: &Arc<Ingredient>, mass: Mass, water: f64) -> Result<(), Unfit> {
    let others = stage.lines.iter().find(|line| !line.is_flour && !is_yeast(line) && plain_water(stage).all(|one| one.name != line.name));
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

/// A culture's build becomes a yeasted preferment; the culture's flour and water are weighed in instead.
fn to_yeast(desk: &mut Desk, at: StageAt, stage: &Stage, line: &Line) -> Result<(), Unfit> {
    let yeast = yeast(desk)?;
    let kept = if stage.kept_back > Mass::ZERO { stage.made() / (stage.made() + stage.kept_back) } else { 1.0 };
    for other in stage.lines.iter().filter(|other| other.name != line.name) {
        desk.balance.set(at, &other.name, other.mass.value * kept);
    }
    desk.manuscript.remove(Part::Stage(at), "kept-back");
    desk.mention_instead(at, "kept-back", |_| String::new());
    let culture = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    let guess = stage.flour * 0.001;
    let names = desk.swap(at, line, &[(yeast, guess)], &["temperature"]);
    give_parts(desk, at, stage, &culture, line.mass.value * kept)?;
    lost_culture(desk);
    let flour = stage.flour + line.mass.value * made_of(&culture).0;
    let had: Mass = plain_water(stage).map(|one| one.mass.value).sum();
    let had = had + line.mass.value * made_of(&culture).1;
    change_hydration(desk, at, stage, had * kept, flour * kept)?;
    rename(desk, at, kind_by(desk.wishes.hydration.map_or(had / flour, Fraction::as_ratio)));
    dose(desk, &stage.name, at, &names, time_of(desk, stage))
}

/// Moves water between a preferment and its dough until it has the hydration that is wanted.
fn change_hydration(desk: &mut Desk, at: StageAt, stage: &Stage, had: Mass, flour: Mass) -> Result<(), Unfit> {
    let Some(wanted) = desk.wishes.hydration else { return Ok(()) };
    let less = had - flour * wanted;
    let beside = stage.lines.iter().find(|line| line.is_flour).map(|line| line.name.clone()).unwrap_or_default();
    desk.change_plain_water(at, -less, &beside)?;
    let users: Vec<(StageAt, &Line)> = desk.before.lines().filter(|(_, line)| super::desk::is_product_of(line, at)).collect();
    for (user, line) in users {
        let stated = desk.balance.get(user, &line.name);
        let share = line.mass.value / stage.made();
        if stated > Mass::ZERO {
            desk.balance.set(user, &line.name, stated - less * share);
        }
        desk.change_plain_water(user, less * share, &line.name)?;
    }
    Ok(())
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
                desk.mention_instead(at, &beside, |said| match said {
                    None => format!("{} and {}", mention(&beside, None), mention(&part.name, None)),
                    said => mention(&beside, said),
                });
            }
        }
    }
    Ok(())
}

/// Ripe culture in a dough becomes a yeasted preferment of the same flour and water.
fn from_ripe(desk: &mut Desk, at: StageAt, stage: &Stage, line: &Line) -> Result<(), Unfit> {
    let yeast = yeast(desk)?;
    let culture = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    let lines = culture.singles().into_iter().map(|(part, share)| (part, line.mass.value * share)).collect::<Vec<_>>();
    let (flour, water) = made_of(&culture);
    let kind = kind_by(water / flour);
    lost_culture(desk);
    let time = desk.wishes.time.unwrap_or(TimeSpan::hours(12.0));
    preferment::put_before(desk, at, stage, kind, lines, (yeast, line.mass.value * flour * 0.001), Some(&line.name), time)
}

fn lost_culture(desk: &mut Desk) {
    desk.lost.push("acid: what the culture's bacteria soured is gone, and with it some flavour and keeping".to_owned());
    desk.minded.push("a culture that is not fed from this build any more must be fed on its own".to_owned());
}

fn yeast(desk: &Desk) -> Result<Arc<Ingredient>, Unfit> {
    let one = desk.into_or("yeast-instant")?;
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
