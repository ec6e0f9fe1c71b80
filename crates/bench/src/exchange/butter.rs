//! Butter for oil and water, and back: fat for fat, water for water.

use super::desk::{Desk, KEEP, figure};
use super::{Exchange, Unfit, only, those};
use formula::ingredient::Figure;
use formula::read::{Action, Group, StageKind};
use formula::resolve::formula::StageAt;
use formula::{Formula, Ingredient, Line, Pantry};
use quantity::{Mass, print};
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "butter",
    about: "butter for oil and water, or oil for butter with the water taken off",
    asks: "--of the butter or the oil; --into an oil (oil-sunflower) or a butter (butter-unsalted)",
    grounds: "fat and water of butter and oil by the ingredient table; salt as 2.5 times sodium (Regulation (EU) 1169/2011)",
    fits,
    offers,
    make,
};

fn offers(formula: &Formula, pantry: &Pantry) -> Vec<String> {
    let has = |is_so: fn(&Line) -> bool| formula.lines().any(|(_, line)| is_so(line));
    let oils = only(has(is_butter), those(pantry, |one| one.group == Group::Fat && one.is_a("oil")));
    [oils, only(has(is_oil), those(pantry, |one| one.is_a("butter")))].concat()
}

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| is_butter(line) || is_oil(line)).map(|(_, line)| line.name.clone()).collect()
}

fn is_butter(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.is_a("butter"))
}

fn is_oil(line: &Line) -> bool {
    // Oil that is fried in is no part of the dough.
    line.ingredient().is_some_and(|one| one.group == Group::Fat && one.is_a("oil")) && !line.after_scaling
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let (at, line) = desk.line("butter or oil", |line| is_butter(line) || is_oil(line))?;
    let one = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    if is_butter(line) { to_oil(desk, at, line, &one) } else { to_butter(desk, at, line, &one) }
}

fn to_oil(desk: &mut Desk, at: StageAt, line: &Line, butter: &Arc<Ingredient>) -> Result<(), Unfit> {
    let stage = desk.before.stage(at);
    if stage.kind == StageKind::Creamed || stage.steps.iter().any(|step| matches!(step.action, Action::Cream)) {
        return Err(Unfit::NotSo(format!("“{}” is creamed: oil holds no air, so that the cream would not stand", stage.title)));
    }
    let oil = desk.wanted_or("oil-sunflower")?;
    if oil.group != Group::Fat {
        return Err(Unfit::NotSo(format!("“{}” is no oil", oil.title)));
    }
    let fat = line.mass.value * (figure(butter, Figure::Fat)? / figure(&oil, Figure::Fat)?);
    let water = line.mass.value * figure(butter, Figure::Water)?;
    let solids = line.mass.value - fat - water;
    desk.swap(at, line, &[(oil, fat), (desk.ingredient("water")?, water)], &KEEP);
    desk.lost.push(format!("{} of milk solids, with butter's flavour and browning", print::mass(solids)));
    desk.lost.push("firmness: butter is solid in the cold, oil never; layers and creamed air need a solid fat".to_owned());
    salt(desk, at, line, butter, 1.0);
    desk.minded.push("sentences that speak of butter without braces still do: read the method once".to_owned());
    Ok(())
}

fn to_butter(desk: &mut Desk, at: StageAt, line: &Line, oil: &Arc<Ingredient>) -> Result<(), Unfit> {
    let butter = desk.wanted_or("butter-unsalted")?;
    let mass = line.mass.value * (figure(oil, Figure::Fat)? / figure(&butter, Figure::Fat)?);
    let water = mass * figure(&butter, Figure::Water)?;
    let names = desk.swap(at, line, &[(Arc::clone(&butter), mass)], &KEEP);
    desk.change_water(at, -water, &names[0])?;
    salt(desk, at, line, &butter, -1.0);
    desk.minded.push("butter goes in soft or melted where oil was poured".to_owned());
    Ok(())
}

/// The salt of salted butter moves to the stage's own salt, or is told.
fn salt(desk: &mut Desk, at: StageAt, line: &Line, butter: &Ingredient, sign: f64) {
    // EU and Codex reckon salt as 2.5 times the sodium.
    let milligrams = butter.composition.get(Figure::Sodium).unwrap_or(0.0);
    let salt = line.mass.value * (milligrams * 2.5 / 100_000.0);
    if salt < Mass::grams(0.1) {
        return;
    }
    let own = desk.before.stage(at).lines.iter().find(|line| line.ingredient().is_some_and(|one| one.group == Group::Salt));
    match own.map(|line| (line.name.clone(), desk.balance.get(at, &line.name) + salt * sign)) {
        Some((name, now)) if now > Mass::ZERO => desk.balance.set(at, &name, now),
        _ => desk.lost.push(format!("{} of salt that salted butter brings", print::mass(salt))),
    }
}
