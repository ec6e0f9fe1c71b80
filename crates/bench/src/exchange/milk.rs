//! Milk for powder and water, and back: water, fat and solids by the table of ingredients.

use super::desk::{Desk, figure};
use super::{Exchange, Unfit, only, those};
use formula::ingredient::Figure;
use formula::resolve::formula::StageAt;
use formula::{Formula, Ingredient, Line, Pantry};
use quantity::{Mass, print};
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "milk",
    about: "milk for milk powder and water, or powder and water for milk",
    asks: "--of the milk or the powder; --into one powder, or a milk",
    grounds: "the solids, fat and water of milk and powder by the ingredient table",
    fits,
    offers,
    make,
};

fn offers(formula: &Formula, pantry: &Pantry) -> Vec<String> {
    let has = |is_so: fn(&Line) -> bool| formula.lines().any(|(_, line)| is_so(line));
    let powders = only(has(is_milk), those(pantry, |one| one.is_a("milk-powder")));
    [powders, only(has(is_powder), those(pantry, |one| one.is_milk() && one.is_a("milk")))].concat()
}

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| is_milk(line) || is_powder(line)).map(|(_, line)| line.name.clone()).collect()
}

fn is_milk(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.is_milk() && one.is_a("milk"))
}

fn is_powder(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.is_a("milk-powder"))
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let (at, line) = desk.line("milk or milk powder", |line| is_milk(line) || is_powder(line))?;
    let one = line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?;
    if is_powder(line) { to_milk(desk, at, line, &one) } else { to_powder(desk, at, line, &one) }
}

fn to_powder(desk: &mut Desk, at: StageAt, line: &Line, milk: &Arc<Ingredient>) -> Result<(), Unfit> {
    let powders = match &desk.wishes.into {
        Some(name) => vec![desk.ingredient(name)?],
        None => vec![desk.ingredient("milk-powder-whole")?, desk.ingredient("milk-powder-skim")?],
    };
    if let Some(other) = powders.iter().find(|one| !one.is_a("milk-powder")) {
        return Err(Unfit::NotSo(format!("“{}” is no milk powder", other.title)));
    }
    let shares = shares(milk, &powders)?;
    let solids: f64 = shares.iter().sum();
    let mut parts = vec![(desk.ingredient("water")?, line.mass.value * (1.0 - solids))];
    parts.extend(
        powders
            .iter()
            .zip(&shares)
            .filter(|(_, share)| **share > 0.0)
            .map(|(one, share)| (Arc::clone(one), line.mass.value * *share)),
    );
    let fat: f64 = powders.iter().zip(&shares).map(|(one, share)| figure(one, Figure::Fat).unwrap_or(0.0) * share).sum();
    let off = line.mass.value * (figure(milk, Figure::Fat)? - fat);
    if off.abs() > Mass::grams(0.3) {
        let (fat, word) = (print::mass(off.abs()), if off > Mass::ZERO { "is gone" } else { "comes in" });
        desk.lost.push(format!("{fat} of milk fat {word}"));
    }
    desk.swap(at, line, &parts, &["temperature"]);
    desk.lost.push("what drying changes in milk: a cooked note, and whey protein that no longer sets as it did".to_owned());
    desk.minded.push("powder goes in with the dry things; loose in warm water it clumps (common practice, no source)".to_owned());
    Ok(())
}

/// How much of each powder makes a gram of milk: the solids by all, the fat by two where two are given.
fn shares(milk: &Ingredient, powders: &[Arc<Ingredient>]) -> Result<Vec<f64>, Unfit> {
    let solids = |one: &Ingredient| figure(one, Figure::Water).map(|water| 1.0 - water);
    let fat = |one: &Ingredient| figure(one, Figure::Fat);
    if let [rich, lean] = powders {
        let (sr, sl, fr, fl) = (solids(rich)?, solids(lean)?, fat(rich)?, fat(lean)?);
        let (s, f) = (solids(milk)?, fat(milk)?);
        let of_rich = (f * sl - s * fl) / (fr * sl - sr * fl);
        let of_lean = (s - of_rich * sr) / sl;
        // Less than a fiftieth of either is within what one lot of milk differs from the next.
        if of_lean < of_rich / 50.0 {
            return Ok(vec![s / sr, 0.0]);
        }
        if of_rich < of_lean / 50.0 {
            return Ok(vec![0.0, s / sl]);
        }
        return Ok(vec![of_rich, of_lean]);
    }
    powders.iter().map(|one| Ok(solids(milk)? / solids(one)?)).collect()
}

fn to_milk(desk: &mut Desk, at: StageAt, line: &Line, powder: &Arc<Ingredient>) -> Result<(), Unfit> {
    let usual = if figure(powder, Figure::Fat)? > 0.1 { "milk-whole" } else { "milk-skim" };
    let milk = desk.wanted_or(usual)?;
    if !milk.is_milk() {
        return Err(Unfit::NotSo(format!("“{}” is no milk", milk.title)));
    }
    let solids = |one: &Ingredient| figure(one, Figure::Water).map(|water| 1.0 - water);
    let mass = line.mass.value * (solids(powder)? / solids(&milk)?);
    let needed = mass - line.mass.value;
    let has: Mass = desk
        .before
        .stage(at)
        .lines
        .iter()
        .filter(|one| one.ingredient().is_some_and(|one| one.is_water()))
        .map(|one| one.mass.value)
        .sum();
    if has < needed {
        let (needed, has) = (print::mass(needed), print::mass(has));
        return Err(Unfit::NotSo(format!("the milk would bring {needed} of water, and the stage has only {has} to give for it")));
    }
    let names = desk.swap(at, line, &[(milk, mass)], &[]);
    desk.change_water(at, -needed, &names[0])?;
    desk.minded.push("milk keeps cold, and counts as a raw dairy food on the bench: mind how long it stands warm".to_owned());
    Ok(())
}
