//! Eggs of one size class for those of another, or for egg by weight.

use super::balance::grams;
use super::desk::{Desk, water_of};
use super::{Exchange, Unfit};
use formula::ingredient::eggs::one;
use formula::read::{EggSize, Group};
use formula::{Formula, Line, Pantry};
use quantity::{Mass, print};

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "egg-size",
    about: "eggs of one size class for another, or beaten egg by weight",
    asks: "--into S, M, L, XL, small … jumbo, or weight; --of the egg, --count of the new eggs",
    grounds: "Delegated Regulation (EU) 2023/2465 and USDA weight classes; shell 11 % (Cotterill and Geiger 1977, from memory)",
    fits,
    offers,
    make,
};

fn offers(_: &Formula, _: &Pantry) -> Vec<String> {
    ["S", "M", "L", "XL", "small", "medium", "large", "extra-large", "jumbo", "weight"].map(str::to_owned).to_vec()
}

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| is_egg(line)).map(|(_, line)| line.name.clone()).collect()
}

fn is_egg(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.group == Group::Egg) && line.mass.value > Mass::ZERO
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let (at, line) = desk.line("egg", is_egg)?;
    let how = format!("one of: {}, weight", EggSize::WORDS.join(", "));
    let into = desk.wishes.into.as_deref().ok_or_else(|| Unfit::NotSaid("--into, a size", how.clone()))?;
    if into == "weight" {
        desk.manuscript.set_amount(at, &line.name, &grams(line.mass.value));
        desk.minded.push("beat the eggs, weigh what is needed, and chill the rest at once".to_owned());
        return Ok(());
    }
    let size = EggSize::named(into).ok_or(Unfit::NotSaid("--into, a size", how))?;
    let ingredient = line.ingredient().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    let weighs = one(ingredient, size).ok_or_else(|| Unfit::NotSo(format!("“{}” is no egg", line.title)))?;
    let count = desk.wishes.count.unwrap_or_else(|| (line.mass.value / weighs).round().max(1.0));
    let now = weighs * count;
    desk.manuscript.set_amount(at, &line.name, &format!("{count} {}", size.word()));
    desk.balance.set(at, &line.name, now);
    let more = now - line.mass.value;
    desk.minded.push(format!(
        "{} {} weigh {} without shell, {} before; an egg may be a tenth off its class's middle",
        print::number(count, 2),
        size.word(),
        print::mass(now),
        print::mass(line.mass.value)
    ));
    if more.abs() < line.mass.value * 0.005 {
        return Ok(());
    }
    let dry = more * (1.0 - water_of(ingredient));
    desk.lost.push(format!("{} of egg solids {}", print::mass(dry.abs()), if dry > Mass::ZERO { "more" } else { "less" }));
    if desk.change_water(at, -(more * water_of(ingredient)), &line.name).is_err() {
        desk.lost.push(format!("{} of the egg's water, which nothing in the stage makes up", print::mass(more.abs())));
    }
    Ok(())
}
