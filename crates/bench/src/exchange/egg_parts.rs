//! Whole egg for yolk and white, and back.

use super::desk::{Desk, KEEP};
use super::{Exchange, Unfit};
use formula::ingredient::eggs::EggPart;
use formula::read::{Amount, Group};
use formula::resolve::formula::{StageAt, Word};
use formula::{Formula, Line};
use quantity::{Kind, Mass, print};
use science::measure::egg::{WHITE, YOLK};

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "egg-parts",
    about: "whole egg for yolk and white, or yolk and white for whole egg",
    asks: "--of the egg, the yolk or the white",
    grounds: "white 59 % and yolk 30 % of an egg in its shell (Cotterill and Geiger 1977, from memory)",
    fits,
    offers: |_, _| Vec::new(),
    make,
};

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| part(line).is_some()).map(|(_, line)| line.name.clone()).collect()
}

fn part(line: &Line) -> Option<EggPart> {
    let one = line.ingredient().filter(|one| one.group == Group::Egg && !one.name.ends_with("dried"))?;
    (line.mass.value > Mass::ZERO).then(|| one.piece_of_egg())
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let lines = desk.lines("egg", |line| part(line).is_some())?;
    let whole: Vec<_> = lines.iter().filter(|(_, line)| part(line) == Some(EggPart::Whole)).collect();
    match whole[..] {
        [(at, line)] => parted(desk, *at, line),
        [] => joined(desk, lines[0].0),
        _ => desk.line("egg", |line| part(line) == Some(EggPart::Whole)).and_then(|(at, line)| parted(desk, at, line)),
    }
}

fn parted(desk: &mut Desk, at: StageAt, line: &Line) -> Result<(), Unfit> {
    let of_yolk = YOLK.as_ratio() / (YOLK.as_ratio() + WHITE.as_ratio());
    let (yolk, white) = (desk.ingredient("egg-yolk")?, desk.ingredient("egg-white")?);
    let names = desk.swap(at, line, &[(yolk, line.mass.value * of_yolk), (white, line.mass.value * (1.0 - of_yolk))], &KEEP);
    let counted = match line.written {
        Amount::Eggs(count, size) => Some(format!("{} {}", count.middle(), size.word())),
        Amount::Measure(measure) if measure.unit.kind() == Kind::Count => Some(measure.value.middle().to_string()),
        _ => None,
    };
    for name in &names {
        if let Some(counted) = &counted {
            desk.manuscript.set_amount(at, name, counted);
        }
    }
    desk.minded.push(
        "yolk and white are a third and two thirds of an egg without shell; a single egg may differ by a twentieth".to_owned(),
    );
    Ok(())
}

fn joined(desk: &mut Desk, at: StageAt) -> Result<(), Unfit> {
    let stage = desk.before.stage(at);
    let of = |wanted| stage.lines.iter().find(|line| part(line) == Some(wanted));
    let (Some(yolk), Some(white)) = (of(EggPart::Yolk), of(EggPart::White)) else {
        return Err(Unfit::NotSo(format!("“{}” has yolk or white alone, of which no whole egg can be made", stage.title)));
    };
    if !are_named_together(desk, at, &yolk.name, &white.name) {
        return Err(Unfit::NotSo("yolk and white go in apart, as where white is whipped: a whole egg cannot do that".to_owned()));
    }
    let of_yolk = YOLK.as_ratio() / (YOLK.as_ratio() + WHITE.as_ratio());
    let whole = (yolk.mass.value / of_yolk).min(white.mass.value / (1.0 - of_yolk));
    let one = desk.ingredient("egg-whole")?;
    let left = [(yolk, whole * of_yolk), (white, whole * (1.0 - of_yolk))].map(|(line, used)| (line, line.mass.value - used));
    let (first, second) = if left[0].1 <= left[1].1 { (left[0], left[1]) } else { (left[1], left[0]) };
    desk.swap(at, first.0, &[(one, whole)], &KEEP);
    if second.1 < Mass::grams(0.05) {
        desk.manuscript.remove_line(at, &second.0.name);
        desk.balance.remove(at, &second.0.name);
        desk.mention_instead(at, &second.0.name, |_| String::new());
    } else {
        desk.balance.set(at, &second.0.name, second.1);
        desk.minded.push(format!("{} of {} is more than whole eggs bring, and stays", print::mass(second.1), second.0.title));
    }
    Ok(())
}

/// Whether one step names both lines.
fn are_named_together(desk: &Desk, at: StageAt, one: &str, other: &str) -> bool {
    let component = &desk.before.components[at.0];
    let names = |word: &Word| match word {
        Word::Line { stage, line, .. } => Some(component.stages[*stage].lines[*line].name.as_str()),
        _ => None,
    };
    component.stages.iter().flat_map(|stage| &stage.steps).any(|step| {
        let has = |name: &str| step.words.iter().any(|word| names(word) == Some(name));
        has(one) && has(other)
    })
}
