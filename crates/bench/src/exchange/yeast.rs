//! Fresh, active dry and instant yeast for each other, by the published ratios.

use super::desk::{Desk, KEEP, water_of};
use super::{Exchange, Unfit, those};
use formula::{Formula, Line, Pantry};
use quantity::{Mass, print};
use science::measure::yeast::{Form, equivalent};
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "yeast",
    about: "fresh, active dry and instant yeast for each other",
    asks: "--into yeast-fresh, yeast-dry or yeast-instant; --of one line, else all yeast",
    grounds: "Hamelman (2004) for the ratios, other books' for their spread; water by the ingredient table",
    fits,
    offers,
    make,
};

fn offers(_: &Formula, pantry: &Pantry) -> Vec<String> {
    those(pantry, |one| one.yeast().is_some())
}

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| form(line).is_some()).map(|(_, line)| line.name.clone()).collect()
}

fn form(line: &Line) -> Option<Form> {
    line.ingredient()?.yeast()
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let lines = desk.lines("baker's yeast", |line| form(line).is_some() && line.mass.value > Mass::ZERO)?;
    let how = "yeast-fresh, yeast-dry or yeast-instant, or an own one like these";
    let into = desk.wishes.into.as_deref().ok_or_else(|| Unfit::NotSaid("--into, the form of yeast", how.to_owned()))?;
    let into = desk.ingredient(into)?;
    let wanted = into.yeast().ok_or_else(|| Unfit::NotSo(format!("“{}” is no baker's yeast: {how}", into.title)))?;
    let mut changed = 0;
    for (at, line) in lines {
        let (Some(one), Some(own)) = (line.ingredient(), form(line)) else { continue };
        if own == wanted {
            continue;
        }
        changed += 1;
        let same = equivalent(line.mass.value, own, wanted);
        let keep: Vec<&str> = KEEP.into_iter().chain(["note", "quiet"]).collect();
        let names = desk.swap(at, line, &[(Arc::clone(&into), same.usual)], &keep);
        desk.minded.push(format!(
            "{} does the work of {} of {}; sources differ from {} to {}",
            print::mass(same.usual),
            print::mass(line.mass.value),
            line.title,
            print::mass(same.spread.from),
            print::mass(same.spread.to)
        ));
        let lacking = line.mass.value * water_of(one) - same.usual * water_of(&into);
        let has_water = desk.before.stage(at).lines.iter().any(|line| line.ingredient().is_some_and(|one| one.is_water()));
        if has_water {
            desk.change_water(at, lacking, &names[0])?;
        } else if lacking.abs() > Mass::grams(0.5) {
            desk.lost.push(format!(
                "{} of water that the yeast {}",
                print::mass(lacking.abs()),
                if lacking > Mass::ZERO { "brought" } else { "now brings" }
            ));
        }
    }
    if changed == 0 {
        return Err(Unfit::NotSo(format!("all of it is {} already", into.called)));
    }
    desk.minded.push(
        match wanted {
            Form::Fresh => "fresh yeast is crumbled into the liquid or the flour, and keeps for two or three weeks in the fridge",
            Form::ActiveDry => "active dry yeast is first soaked in a little of the liquid, lukewarm; cold liquid harms it",
            Form::Instant => "instant yeast goes into the flour dry, and not straight into cold liquid",
        }
        .to_owned()
            + " (common practice, no source)",
    );
    Ok(())
}
