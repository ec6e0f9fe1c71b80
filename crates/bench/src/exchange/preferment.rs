//! A straight dough with a preferment: part of its own flour, water and yeast is mixed beforehand.

use super::balance::grams;
use super::desk::{Desk, is_product_of, named};
use super::mentions::{joined, mention};
use super::{Exchange, Unfit};
use crate::target::{When, factor_for};
use formula::read::StageKind;
use formula::resolve::formula::StageAt;
use formula::{Formula, Ingredient, Line, Pantry, Stage};
use quantity::{Fraction, Mass, TimeSpan, print};
use std::cell::Cell;
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "preferment",
    about: "a straight dough for one with a preferment of its own flour, water and yeast",
    asks: "--of the dough's stage, --into poolish, sponge or biga; --share of its flour (30 %), --hydration (poolish 100 %, sponge 65 %, biga 50 %), --time it may take (12 h)",
    grounds: "the baker's arithmetic; the dose of yeast by the course of the ferment; usual shares and hydrations are common practice, no source",
    fits,
    offers,
    make,
};

fn offers(_: &Formula, _: &Pantry) -> Vec<String> {
    ["poolish", "sponge", "biga"].map(str::to_owned).to_vec()
}

/// The share of the flour and the time where nothing is said: common practice, no source.
const SHARE: Fraction = Fraction::percent(30.0);
const TIME: TimeSpan = TimeSpan::hours(12.0);
/// The share of yeast from which the dose is sought.
pub const GUESS: f64 = 0.001;

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| is_dough(stage)).map(|(_, stage)| stage.name.clone()).collect()
}

fn is_dough(stage: &Stage) -> bool {
    !stage.kind.is_preferment() && stage.flour > Mass::ZERO && stage.lines.iter().any(is_yeast)
}

fn is_yeast(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.yeast().is_some())
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let at = desk.stage("dough with flour and yeast of its own", |_, stage| is_dough(stage))?;
    let stage = desk.before.stage(at);
    let kind = wanted_kind(desk)?;
    desk.rest_on(crate::grounds::by::DOSE.known(()).origin);
    let share = desk.wishes.share.unwrap_or(SHARE);
    if !(share > Fraction::ZERO && share < Fraction::WHOLE) {
        return Err(Unfit::NotSaid("--share between nothing and all", "such as --share \"30 %\"".to_owned()));
    }
    let usual = match kind {
        StageKind::Poolish => 100.0,
        StageKind::Biga => 50.0,
        _ => 65.0,
    };
    let flour = stage.flour * share;
    let water = flour * desk.wishes.hydration.unwrap_or(Fraction::percent(usual));
    let mut lines = take_flour(desk, at, stage, flour);
    lines.push(take_water(desk, at, stage, water)?);
    let yeast = stage.lines.iter().find(|line| is_yeast(line)).ok_or_else(|| Unfit::NotBalanced("yeast".to_owned()))?;
    let one = yeast.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(yeast.name.clone()))?;
    desk.lost.push("time: the preferment is mixed beforehand, and the dough rises on its own clock".to_owned());
    let time = desk.wishes.time.unwrap_or(TIME);
    put_before(desk, at, stage, &Planned { kind, lines, yeast: one, time, instead_of: None })
}

fn wanted_kind(desk: &Desk) -> Result<StageKind, Unfit> {
    match desk.wishes.into.as_deref() {
        None => Ok(StageKind::Poolish),
        Some(word) => match StageKind::named(word) {
            Some(kind @ (StageKind::Poolish | StageKind::Sponge | StageKind::Biga | StageKind::Preferment)) => Ok(kind),
            Some(StageKind::Levain) => {
                Err(Unfit::NotSo("make it a sponge first, and exchange the leaven of the sponge for a culture then".to_owned()))
            }
            _ => Err(Unfit::NotSaid("--into poolish, sponge, biga or preferment", format!("“{word}” is none of these"))),
        },
    }
}

/// Takes flour from the main flour where it suffices, else from each by its share.
fn take_flour(desk: &mut Desk, at: StageAt, stage: &Stage, flour: Mass) -> Vec<(Arc<Ingredient>, Mass)> {
    let flours: Vec<&Line> = stage.lines.iter().filter(|line| line.is_flour).collect();
    let main = flours.iter().copied().max_by(|a, b| a.mass.value.as_grams().total_cmp(&b.mass.value.as_grams()));
    let alone = main.filter(|main| main.mass.value > flour * 1.02);
    let mut taken = Vec::new();
    for line in flours {
        let part = match alone {
            Some(main) if main.name == line.name => flour,
            Some(_) => Mass::ZERO,
            None => line.mass.value * (flour / stage.flour),
        };
        // To a hundredth of a gram, so that what is left is told by as few digits.
        let part = Mass::grams((part.as_grams() * 100.0).round() / 100.0);
        if let (true, Some(one)) = (part > Mass::ZERO, line.ingredient()) {
            desk.balance.set(at, &line.name, line.mass.value - part);
            taken.push((Arc::clone(one), part));
        }
    }
    taken
}

fn take_water(desk: &mut Desk, at: StageAt, stage: &Stage, water: Mass) -> Result<(Arc<Ingredient>, Mass), Unfit> {
    let water = Mass::grams((water.as_grams() * 100.0).round() / 100.0);
    let line = stage.lines.iter().find(|line| line.ingredient().is_some_and(|one| one.is_water()));
    let has = line.map_or(Mass::ZERO, |line| line.mass.value);
    match line.and_then(|line| Some((line, line.ingredient()?))) {
        Some((line, one)) if has >= water => {
            let left = has - water;
            if left < Mass::grams(0.05) {
                desk.manuscript.remove_line(at, &line.name);
                desk.balance.remove(at, &line.name);
            } else {
                desk.balance.set(at, &line.name, left);
            }
            Ok((Arc::clone(one), water))
        }
        _ => Err(Unfit::NotSo(format!(
            "the preferment would need {} of plain water, and “{}” has {}: take a smaller share or a stiffer one, or exchange the milk for powder and water first",
            print::mass(water),
            stage.title,
            print::mass(has)
        ))),
    }
}

/// A preferment that is to be written.
pub struct Planned<'p> {
    /// What it is.
    pub kind: StageKind,
    /// Its flours and its water.
    pub lines: Vec<(Arc<Ingredient>, Mass)>,
    /// The yeast that raises it.
    pub yeast: Arc<Ingredient>,
    /// How long it may take.
    pub time: TimeSpan,
    /// The line of the dough in whose place it comes; else the dough's own yeast gives its dose.
    pub instead_of: Option<&'p str>,
}

/// Writes a preferment before the stage that uses it, and finds the dose of yeast that makes it ripe in time.
pub fn put_before(desk: &mut Desk, at: StageAt, stage: &Stage, planned: &Planned) -> Result<(), Unfit> {
    let Planned { kind, lines, yeast, time, instead_of } = planned;
    let name = free_stage_name(desk, at, *kind);
    let own = stage.lines.iter().find(|line| line.ingredient().is_some_and(|one| one.name == yeast.name));
    name_in_dough(desk, at, stage, &name, *instead_of);
    let flour: Mass = lines.iter().filter(|(one, _)| !one.is_water()).map(|(_, mass)| *mass).sum();
    let guess = flour * GUESS;
    let text = written(desk, &name, planned, guess);
    desk.manuscript.insert_stage(at, &text);
    desk.balance.stage_inserted(at);
    for (one, mass) in lines {
        let has = desk.balance.get(at, &one.name);
        desk.balance.set(at, &one.name, has + *mass);
    }
    desk.balance.set(at, &yeast.name, guess);
    dose(desk, &name, at, std::slice::from_ref(&yeast.name), *time)?;
    let given = desk.balance.get(at, &yeast.name);
    let (Some(line), None) = (own, instead_of) else { return Ok(()) };
    let (left, needs) = (line.mass.value - given, print::mass(given));
    if left <= Mass::ZERO {
        let (kind, title, has) = (kind.word(), &line.title, print::mass(line.mass.value));
        return Err(Unfit::NotSo(format!(
            "to be ripe in that time the {kind} would need {needs} of {title}, and the dough has only {has}: give it longer"
        )));
    }
    desk.balance.set((at.0, at.1 + 1), &line.name, left);
    Ok(())
}

/// The dough's line of the preferment, and where its sentences name it.
fn name_in_dough(desk: &mut Desk, at: StageAt, stage: &Stage, name: &str, instead_of: Option<&str>) {
    if let Some(line) = instead_of {
        desk.manuscript.replace_line(at, line, name, &[("amount", "all")], &[]);
        desk.balance.remove(at, line);
        desk.mention_instead(at, line, |part| mention(name, part.filter(|part| *part == "name")));
        return;
    }
    let beside = stage.lines.iter().find(|line| line.is_flour).map(|line| line.name.clone()).unwrap_or_default();
    desk.manuscript.insert_line(at, &beside, name, &[("amount", "all")]);
    let water = stage.lines.iter().find(|line| line.ingredient().is_some_and(|one| one.is_water()));
    let Some(water) = water.map(|line| line.name.clone()) else { return };
    let is_left = desk.balance.get(at, &water) > Mass::ZERO;
    let is_first = Cell::new(true);
    let language = desk.language();
    desk.mention_instead(at, &water, |part| match (is_left, part) {
        (true, None) if is_first.replace(false) => joined(&[mention(name, None), mention(&water, None)], language),
        (true, part) => mention(&water, part),
        (false, None) if is_first.replace(false) => mention(name, None),
        (false, _) => String::new(),
    });
}

fn free_stage_name(desk: &Desk, at: StageAt, kind: StageKind) -> String {
    let component = &desk.before.components[at.0];
    let is_taken = |name: &str| {
        component.stages.iter().any(|stage| stage.name == name || stage.lines.iter().any(|line| line.name == name))
            || desk.before.components.iter().any(|one| one.name == name)
    };
    let names = std::iter::once(kind.word().to_owned()).chain((2..).map(|n| format!("{}-{n}", kind.word())));
    names.into_iter().find(|name| !is_taken(name)).unwrap_or_default()
}

fn written(desk: &Desk, name: &str, planned: &Planned, guess: Mass) -> String {
    let Planned { kind, lines, yeast, time, .. } = planned;
    let mut all: Vec<(&str, Mass)> = Vec::new();
    for (one, mass) in lines {
        match all.iter_mut().find(|(known, _)| *known == one.name) {
            Some((_, sum)) => *sum += *mass,
            None => all.push((&one.name, *mass)),
        }
    }
    let weighed: String = all.iter().map(|(one, mass)| format!("{one} = \"{}\"\n", grams(*mass))).collect();
    let flours: Vec<String> = lines.iter().filter(|(one, _)| !one.is_water()).map(|(one, _)| mention(&one.name, None)).collect();
    let water = lines.iter().find(|(one, _)| one.is_water()).map(|(one, _)| mention(&one.name, None)).unwrap_or_default();
    let room = desk.around.room.value.as_celsius();
    let hours = print::number(time.as_hours(), 1);
    let title = print::capital(kind.word());
    format!(
        "[[component.stage]]\nname = \"{name}\"\ntitle = \"{title}\"\nkind = \"{}\"\n\n[component.stage.ingredients]\n{weighed}{} = \"{}\"\n\n\
         [[component.stage.step]]\naction = \"mix\"\ntext = \"Stir {} into {water}, then work in {} until no dry flour is left.\"\ntime = \"5 min\"\n\n\
         [[component.stage.step]]\naction = \"ferment\"\nattention = \"waiting\"\ntext = \"Cover and leave at {{temperature}} for {{time}}, {{until}}.\"\n\
         time = \"{hours} h\"\ntemperature = \"{} °C\"\nuntil = \"ripe\"\n",
        kind.word(),
        yeast.name,
        grams(guess),
        mention(&yeast.name, None),
        flours.join(" and "),
        print::number(room, 1),
    )
}

/// Finds the dose with which a stage is ripe after a time, and weighs it in.
pub fn dose(desk: &mut Desk, stage: &str, at: StageAt, names: &[String], time: TimeSpan) -> Result<(), Unfit> {
    let Some(name) = names.first() else { return Ok(()) };
    let now = desk.hold()?;
    let factor = factor_for(&now, stage, When::Ripe(time), desk.around).map_err(|why| {
        Unfit::NotSo(format!("no dose of yeast makes “{stage}” ripe in {}: {why}", print::time(quantity::Between::just(time))))
    })?;
    let needed = desk.balance.get(at, name) * factor;
    // As fine as any scale shows, so that the text reads well.
    let steps = if needed < Mass::grams(1.0) { 1000.0 } else { 100.0 };
    desk.balance.set(at, name, Mass::grams((needed.as_grams() * steps).round().max(1.0) / steps));
    Ok(())
}

/// The one line that uses all of a stage, in the same component.
pub fn only_user<'d>(desk: &Desk<'d>, at: StageAt) -> Result<(StageAt, &'d Line), Unfit> {
    let before = desk.before;
    let users: Vec<(StageAt, &'d Line)> = before.lines().filter(|(_, line)| is_product_of(line, at)).collect();
    let title = &before.stage(at).title;
    match users[..] {
        [(user, line)] if user.0 == at.0 => Ok((user, line)),
        [] => Err(Unfit::NotSo(format!("no stage uses “{title}”"))),
        _ => Err(Unfit::NotSo(format!("“{title}” is used in more than one place"))),
    }
}

/// Takes a stage out of the text, whose lines are all accounted for elsewhere.
pub fn remove_stage(desk: &mut Desk, at: StageAt) {
    desk.manuscript.remove_stage(at);
    desk.balance.stage_removed(at);
}

/// A line of an ingredient as it is written in a stage.
pub fn insert(desk: &mut Desk, at: StageAt, after: &str, one: &Ingredient, mass: Mass) -> String {
    let name = desk.free_name(at, &one.name, after);
    desk.manuscript.insert_line(at, after, &name, &named(&one.name, &name, &grams(mass)));
    desk.balance.set(at, &name, mass);
    name
}
