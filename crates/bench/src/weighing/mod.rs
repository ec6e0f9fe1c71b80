//! Weighable amounts: what a kitchen's scales can show of each line, and what to do where they cannot.

mod remedy;
mod spoonful;

pub use remedy::{Remedy, Solution, smallest_batch, solution};
pub use spoonful::{Spoonful, spoonful};

use formula::arithmetic::{RowKind, overall};
use formula::read::{Amount, Group, Kitchen, Scale};
use formula::{Content, Formula, Ingredient, Line, Stage};
use quantity::{Fraction, Kind, Mass, SpoonSystem};
use science::measure::scale::{TOO_SMALL_FOR_THE_SCALE, reading};

/// A line as it can be weighed.
#[derive(Clone, Debug)]
pub struct Weighable {
    /// Which component, stage and line it is.
    pub at: (usize, usize, usize),
    /// What the formula asks.
    pub wanted: Mass,
    /// What the scale can show nearest to it.
    pub shown: Mass,
    /// The scale.
    pub scale: Scale,
    /// The standard uncertainty of the reading, as a share.
    pub uncertainty: Fraction,
    /// A spoon measure of it, where one comes near.
    pub spoonful: Option<Spoonful>,
    /// What to do, where no scale of the kitchen is fine enough.
    pub remedy: Option<Remedy>,
}

/// What rounding to the scales does to a share of the overall formula.
#[derive(Clone, Debug)]
pub struct Shift {
    /// The ingredient's title.
    pub ingredient: String,
    /// Its share of the total flour as the formula asks.
    pub wanted: Fraction,
    /// Its share as weighed.
    pub weighed: Fraction,
}

/// Rounds every line to what a kitchen's scales can show.
#[must_use]
pub fn weigh(formula: &Formula, kitchen: &Kitchen, spoons: SpoonSystem) -> Vec<Weighable> {
    let mut all = Vec::new();
    for ((c, s), stage) in formula.stages() {
        for (l, line) in stage.lines.iter().enumerate() {
            if let Some(scale) = scale_for(kitchen, line.mass.value) {
                let mut one = weigh_line((c, s, l), line, scale, spoons);
                keep_what_can_be_done(&mut one, water_in(stage));
                all.push(one);
            }
        }
    }
    all
}

/// The coarsest scale that is fine enough for an amount, or else the finest that can carry it.
fn scale_for(kitchen: &Kitchen, amount: Mass) -> Option<&Scale> {
    let carrying = || kitchen.scales.iter().filter(move |scale| scale.up_to >= amount);
    let fine_enough = |scale: &&Scale| Fraction::ratio(reading(scale.shows) / amount) <= TOO_SMALL_FOR_THE_SCALE;
    let coarsest = carrying().filter(fine_enough).max_by(|a, b| a.shows.as_grams().total_cmp(&b.shows.as_grams()));
    coarsest.or_else(|| carrying().next()).or_else(|| kitchen.scales.last())
}

fn weigh_line(at: (usize, usize, usize), line: &Line, scale: &Scale, spoons: SpoonSystem) -> Weighable {
    let wanted = line.mass.value;
    // A half goes to the even neighbour, as figures are printed.
    let shown = scale.shows * (wanted / scale.shows).round_ties_even();
    // Nothing is weighed exactly.
    let share = |ratio: f64| Fraction::ratio(if wanted > Mass::ZERO { ratio } else { 0.0 });
    let uncertainty = share(reading(scale.shows) / wanted);
    let ingredient = match &line.content {
        Content::Ingredient(ingredient) if is_weighed(line) => Some(ingredient),
        _ => None,
    };
    let too_small = wanted > Mass::ZERO && uncertainty > TOO_SMALL_FOR_THE_SCALE;
    let ingredient = ingredient.filter(|_| too_small);
    Weighable {
        at,
        wanted,
        shown,
        scale: scale.clone(),
        uncertainty,
        spoonful: ingredient.and_then(|ingredient| spoonful(ingredient, wanted, spoons)),
        remedy: ingredient.map(|ingredient| Remedy {
            solution: can_be_stirred_up(ingredient).then(|| solution(wanted, scale.shows)),
            smallest_batch: smallest_batch(wanted, scale.shows),
        }),
    }
}

/// The water weighed into a stage as such, which a solution can be taken off.
fn water_in(stage: &Stage) -> Mass {
    let is_water = |line: &&Line| matches!(&line.content, Content::Ingredient(one) if one.is_water());
    stage.lines.iter().filter(is_water).map(|line| line.mass.value).sum()
}

/// Drops a solution for which the stage has not water enough, and a batch that is hardly larger.
fn keep_what_can_be_done(one: &mut Weighable, water: Mass) {
    let Some(remedy) = &mut one.remedy else { return };
    if remedy.solution.as_ref().is_some_and(|solution| solution.water_taken > water || solution.water > Mass::kilograms(2.0)) {
        remedy.solution = None;
    }
    if remedy.smallest_batch < 1.05 {
        one.remedy = None;
    }
}

/// Whether the author thinks of a line by weight: what is counted or spooned needs no scale.
fn is_weighed(line: &Line) -> bool {
    match &line.written {
        Amount::Measure(measure) => matches!(measure.unit.kind(), Kind::Mass | Kind::Share),
        Amount::Eggs(..) | Amount::Part(_) => false,
    }
}

/// What dissolves in water or stays evenly stirred up while a part is taken.
fn can_be_stirred_up(ingredient: &Ingredient) -> bool {
    ingredient.is_alive() || matches!(ingredient.group, Group::Salt | Group::Sugar)
}

/// What the rounding does to each share of a component's overall formula, where it can be seen.
#[must_use]
pub fn shifts(formula: &Formula, component: usize, weighed: &[Weighable]) -> Vec<Shift> {
    let mut rounded = formula.clone();
    for one in weighed {
        let (c, s, l) = one.at;
        rounded.components[c].stages[s].lines[l].mass.value = one.shown;
    }
    let (before, after) = (overall(formula, component), overall(&rounded, component));
    let pairs = before.rows.iter().zip(&after.rows);
    pairs
        .filter(|(row, _)| !matches!(row.kind, RowKind::ReadyMade(_)))
        .filter_map(|(row, other)| {
            let (wanted, weighed) = (row.percent?, other.percent?);
            let relative = (weighed - wanted).abs() / wanted;
            (relative > 0.005).then(|| Shift { ingredient: row.kind.title().to_owned(), wanted, weighed })
        })
        .collect()
}
