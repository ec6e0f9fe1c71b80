//! Stages: used, used up, and not overdrawn; units and spoons kept to one system.

use super::Found;
use super::formula::{Content, Formula};
use crate::Place;
use crate::fault;
use crate::read::{Amount, Draft, LineDraft};
use quantity::{Fraction, Mass, SpoonSystem, Unit, print};
use std::collections::BTreeMap;

/// What may be left of a stage before it is worth a word.
const LEFT_OVER: Fraction = Fraction::percent(3.0);
/// What may be missing of a stage before it is a fault: a rounding.
const OVERDRAWN: Fraction = Fraction::percent(0.5);

/// Reports what is wrong with the use of stages, where every line is read, bound and sized.
pub fn check(draft: &Draft, formula: &Formula, found: Found) {
    let taken = taken(formula);
    for (c, component) in formula.components.iter().enumerate() {
        for (s, stage) in component.stages.iter().enumerate() {
            let place = draft.components[c].stages[s].name.place(&draft.file);
            let is_product = s + 1 == component.stages.len();
            if stage.lines.is_empty() && !is_product {
                let message = format!("the stage “{}” has no ingredients", stage.name);
                found.push(
                    fault::NOTHING_IN_IT
                        .at(place, message)
                        .hint("give it a line, or move its steps to the stage that they belong to"),
                );
                continue;
            }
            match taken.get(&(c, s)) {
                None if !is_product => {
                    let message = format!("the stage “{}” is never used", stage.name);
                    let hint = format!("use it in a later stage: {} = \"all\"", stage.name);
                    found.push(fault::STAGE_NEVER_USED.at(place, message).hint(hint));
                }
                Some(taken) => check_taken(&place, stage, *taken, is_product, found),
                None => {}
            }
        }
    }
}

/// What is taken of each stage that is used.
fn taken(formula: &Formula) -> BTreeMap<(usize, usize), Mass> {
    let mut taken = BTreeMap::new();
    let lines = formula.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    for line in lines {
        if let Content::Stage(c, s) = line.content {
            *taken.entry((c, s)).or_insert(Mass::ZERO) += line.mass.value;
        }
    }
    taken
}

fn check_taken(place: &Place, stage: &super::formula::Stage, taken: Mass, is_product: bool, found: Found) {
    let made = stage.made();
    let over = taken - made;
    if over > made.max(Mass::grams(1.0)) * OVERDRAWN {
        let message = format!("{} of “{}” are used, but it makes {}", print::mass(taken), stage.name, print::mass(made));
        found.push(fault::MORE_USED_THAN_MADE.at(place.clone(), message).hint("make more of it, or use less"));
    } else if -over > made * LEFT_OVER && !is_product {
        let message = format!("{} of “{}” are left over: it makes {}", print::mass(-over), stage.name, print::mass(made));
        let hint = "use \"all\" of it, make less, or say kept-back if it is kept for next time";
        found.push(fault::STAGE_LEFT_OVER.at(place.clone(), message).hint(hint));
    }
}

/// Gram and ounces in one formula are a slip in all but the rarest case.
pub fn check_units(draft: &Draft, found: Found) {
    let lines = || draft.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    let unit = |line: &LineDraft| match &line.amount.value {
        Amount::Measure(measure) => Some(measure.unit),
        _ => None,
    };
    let metric = |unit| matches!(unit, Unit::Gram | Unit::Kilogram | Unit::Milligram);
    let avoirdupois = |unit| matches!(unit, Unit::Ounce | Unit::Pound);
    let any_metric = lines().any(|line| unit(line).is_some_and(metric));
    let first = lines().find(|line| unit(line).is_some_and(avoirdupois));
    if let (true, Some(line)) = (any_metric, first) {
        let message = format!("“{}” is weighed in ounces or pounds, other lines in gram", line.name.value);
        let hint = "keep to one system; the page can show both, with second-units in book.toml";
        found.push(fault::MIXED_UNITS.at(line.amount.place(&draft.file), message).hint(hint));
    }
}

/// A spoon or cup means something only once its country is named.
pub fn check_spoons(draft: &Draft, spoons: Option<SpoonSystem>, found: Found) {
    if spoons.is_some() {
        return;
    }
    let mut lines = draft.components.iter().flat_map(|component| &component.stages).flat_map(|stage| &stage.lines);
    let spoon = |line: &&LineDraft| matches!(&line.amount.value, Amount::Measure(measure) if measure.unit.is_spoon());
    if let Some(line) = lines.find(spoon) {
        let message =
            format!("“{}” is measured by the spoon or cup, and the book does not say whose; metric is assumed", line.name.value);
        let hint = "write spoons = \"metric\" (or australian, us-customary, us-label) in book.toml";
        found.push(fault::SPOONS_NOT_NAMED.at(line.amount.place(&draft.file), message).hint(hint));
    }
}
