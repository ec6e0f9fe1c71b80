//! One flour for another, the water corrected by what each takes up.

use super::desk::{Desk, KEEP, figure};
use super::liquid::liquid_of;
use super::{Exchange, Unfit, those};
use formula::ingredient::Figure;
use formula::resolve::formula::{Content, Word};
use formula::{Formula, Ingredient, Line, Pantry, Stage};
use quantity::{Fraction, Mass, print};
use std::sync::Arc;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "flour",
    about: "one flour for another, the water corrected by protein and bran",
    asks: "--of the flour, --into a flour; --share of it (all)",
    grounds: "Farrand (1969, from memory): 1.4 % of water for a percent of protein; 0.8 % for a percent of fibre is common practice, no source",
    fits,
    offers,
    make,
};

fn offers(_: &Formula, pantry: &Pantry) -> Vec<String> {
    those(pantry, |one| one.counts_as_flour)
}

/// Water that a percent of protein takes up, as percent of the flour: the term of Farrand's regression on white
/// flours (Cereal Chemistry 46, 1969; from memory). Damaged starch is taken as alike, and so is moisture, which
/// follows the air that a bag stands in rather than the kind of flour.
const PROTEIN: f64 = 1.4;
/// The same for a percent of fibre, which stands for bran: common practice, no source.
const FIBRE: f64 = 0.8;

fn fits(formula: &Formula) -> Vec<String> {
    formula.lines().filter(|(_, line)| is_flour(line)).map(|(_, line)| line.name.clone()).collect()
}

fn is_flour(line: &Line) -> bool {
    line.is_flour && line.ingredient().is_some() && line.mass.value > Mass::ZERO
}

/// How much more water a flour takes up than another one, as a share of its weight.
pub fn takes_up(into: &Ingredient, than: &Ingredient) -> Result<Fraction, Unfit> {
    let term = |of: Figure, weight: f64| Ok::<f64, Unfit>(weight * (figure(into, of)? - figure(than, of)?));
    // Where a source gives no fibre, bran cannot be told apart.
    let fibre = term(Figure::Fibre, FIBRE).unwrap_or(0.0);
    Ok(Fraction::ratio(term(Figure::Protein, PROTEIN)? + fibre))
}

/// The formula where a flour has so much more protein than its source says: the liquid of each stage that holds it
/// follows as in the exchange of one flour for another, and so do the weights of what is made of it. None where no
/// stage has both the flour and liquid enough.
#[must_use]
pub fn with_protein(formula: &Formula, flour: &Ingredient, more: Fraction) -> Option<Formula> {
    let mut changed = formula.clone();
    let mut found = false;
    let places: Vec<_> = formula.stages().map(|(at, _)| at).collect();
    for (c, s) in places {
        let was = formula.stage((c, s));
        let mut ratios: Vec<f64> = was.lines.iter().map(|line| grown(line, formula, &changed)).collect();
        if let Some((line, by)) = thirst(was, flour, more) {
            found = true;
            ratios[line] = 1.0 + by / was.lines[line].mass.value;
        }
        let component = &mut changed.components[c];
        for (line, ratio) in component.stages[s].lines.iter_mut().zip(&ratios) {
            line.mass.value = line.mass.value * *ratio;
        }
        for step in component.stages.iter_mut().flat_map(|stage| &mut stage.steps) {
            for word in &mut step.words {
                if let Word::Line { stage, line, mass, .. } = word
                    && *stage == s
                {
                    *mass = *mass * ratios[*line];
                }
            }
        }
    }
    for (component, was) in changed.components.iter_mut().zip(&formula.components) {
        if let (Some(now), Some(before)) = (component.stages.last(), was.stages.last()) {
            component.yields.made = component.yields.made * (now.made() / before.made());
        }
    }
    found.then_some(changed)
}

/// How a line of another stage's product grows with it.
fn grown(line: &Line, before: &Formula, after: &Formula) -> f64 {
    let Content::Stage(c, s) = line.content else { return 1.0 };
    let ratio = after.stage((c, s)).mixed() / before.stage((c, s)).mixed();
    if ratio.is_finite() { ratio } else { 1.0 }
}

/// Which line of a stage answers a flour's protein, and by how much.
fn thirst(stage: &Stage, flour: &Ingredient, more: Fraction) -> Option<(usize, Mass)> {
    let own = stage.lines.iter().filter(|line| is_flour(line) && line.ingredient().is_some_and(|one| one.name == flour.name));
    let flour: Mass = own.map(|line| line.mass.value).sum();
    let (liquid, share) = liquid_of(stage.lines.iter().filter(|line| line.mass.value > Mass::ZERO), true)?;
    let by = flour * (PROTEIN * more.as_ratio() / share);
    let index = stage.lines.iter().position(|line| line.name == liquid.name)?;
    (flour > Mass::ZERO && by.abs() < liquid.mass.value).then_some((index, by))
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let (at, line) = desk.line("flour", is_flour)?;
    let into = desk.wishes.into.as_deref();
    let into = into.ok_or_else(|| Unfit::NotSaid("--into, a flour", "such as --into flour-bread".to_owned()))?;
    let (one, into) = (line.ingredient().cloned().ok_or_else(|| Unfit::NotBalanced(line.name.clone()))?, desk.ingredient(into)?);
    if !into.counts_as_flour {
        return Err(Unfit::NotSo(format!("“{}” does not count as flour", into.title)));
    }
    if one.name == into.name {
        return Err(Unfit::NotSo(format!("it is {} already", into.called)));
    }
    let share = desk.wishes.share.unwrap_or(Fraction::WHOLE);
    if !(share > Fraction::ZERO && share <= Fraction::WHOLE) {
        return Err(Unfit::NotSaid("--share above nothing and up to 100 %", "such as --share \"20 %\"".to_owned()));
    }
    let (new, rest) = (line.mass.value * share, line.mass.value * share.left());
    let mut parts = vec![(Arc::clone(&into), new)];
    if rest > Mass::ZERO {
        parts.insert(0, (Arc::clone(&one), rest));
    }
    let more = takes_up(&into, &one)?;
    let names = desk.swap(at, line, &parts, &KEEP);
    let name = names.last().cloned().unwrap_or_default();
    if desk.change_water(at, new * more, &name).is_err() {
        desk.lost.push(format!(
            "the consistency: {} less liquid would be right, and the stage has none to give",
            print::mass(new * -more.as_ratio())
        ));
    }
    told(desk, &one, &into, more);
    Ok(())
}

fn told(desk: &mut Desk, one: &Ingredient, into: &Ingredient, more: Fraction) {
    let protein = |one: &Ingredient| {
        one.composition.share(Figure::Protein).map_or_else(|| "unknown".to_owned(), |share| print::percent(share, 1))
    };
    desk.lost.push(format!("protein: {} where it was {}", protein(into), protein(one)));
    desk.minded.push(format!(
        "{} takes up {} {} water of its weight than {}, give or take as much again: hold some back and judge by the dough",
        into.called,
        print::percent(more.abs(), 1),
        if more > Fraction::ZERO { "more" } else { "less" },
        one.called
    ));
    let wheat = |one: &Ingredient| one.allergens.iter().any(|code| code == "wheat");
    if wheat(one) && !wheat(into) {
        desk.lost.push(format!("gluten: {} holds no gas as wheat does", into.called));
    }
}
