//! Formulas side by side on the basis of the overall formula, their figures and what is foreseen of them, each
//! difference graded by how much it matters.

mod foreseen;
mod grade;
mod row;

pub use grade::Difference;
pub use row::{Row, Unit};

use crate::forecast::{Forecast, Point, Surroundings, foresee};
use formula::arithmetic::{Figures, Overall, RowKind, figures, overall};
use formula::read::Group;
use formula::{Formula, Known};
use grade::Step;
use quantity::{Fraction, Mass};

/// Formulas side by side.
#[derive(Clone, Debug)]
pub struct Comparison {
    /// What the formulas are called, in the order of the cells.
    pub columns: Vec<String>,
    /// What is compared, part by part.
    pub parts: Vec<Part>,
}

/// Rows of one kind.
#[derive(Clone, Debug)]
pub struct Part {
    /// The component, where formulas have several.
    pub component: Option<String>,
    /// What the rows are.
    pub title: &'static str,
    /// The rows.
    pub rows: Vec<Row>,
    /// How what ferments rises, where the rows are of a forecast.
    pub courses: Vec<Courses>,
}

/// A rise of every formula, for a chart.
#[derive(Clone, Debug)]
pub struct Courses {
    /// What rises: a preferment, a dough, a shaped dough.
    pub whose: &'static str,
    /// The course in each formula; empty where it has none.
    pub of: Vec<Vec<Point>>,
}

/// Sets formulas side by side, as `columns` calls them, foreseen in the same surroundings. Their first components are
/// compared with each other, further ones by name.
#[must_use]
pub fn compare(formulas: &[&Formula], around: &Surroundings, columns: &[String]) -> Comparison {
    let forecasts: Vec<Forecast> = formulas.iter().map(|one| foresee(one, around)).collect();
    let mut parts = Vec::new();
    let components = paired(formulas);
    let are_many = components.len() > 1;
    for (title, at) in components {
        let component = are_many.then_some(title);
        let is_in_all = at.iter().all(Option::is_some);
        let overalls: Vec<Option<Overall>> = formulas.iter().zip(&at).map(|(one, at)| at.map(|at| overall(one, at))).collect();
        let part = |title: &'static str, rows: Vec<Row>| Part { component: component.clone(), title, rows, courses: Vec::new() };
        parts.push(part("makes", makes(formulas, &at, &overalls)));
        // Of what one formula alone has, it is enough to say how much there is.
        if !is_in_all {
            continue;
        }
        parts.push(part("overall formula", ingredients(&overalls)));
        parts.push(part("figures", shares(&overalls)));
        let courses = foreseen::courses(formulas, &at, &forecasts);
        parts.push(Part { courses, ..part("forecast", foreseen::rows(formulas, &at, &forecasts)) });
    }
    parts.retain(|part| !part.rows.is_empty());
    Comparison { columns: columns.to_vec(), parts }
}

/// The components that belong together: their title, and where each formula has it.
fn paired(formulas: &[&Formula]) -> Vec<(String, Vec<Option<usize>>)> {
    let mut pairs: Vec<(String, String, Vec<Option<usize>>)> = Vec::new();
    for (f, formula) in formulas.iter().enumerate() {
        for (c, component) in formula.components.iter().enumerate() {
            // A formula's first component is what it is about, whatever it is called.
            let found =
                pairs.iter().position(|(name, _, at)| if c == 0 { at.contains(&Some(0)) } else { *name == component.name });
            let index = found.unwrap_or_else(|| {
                pairs.push((component.name.clone(), component.title.clone(), vec![None; formulas.len()]));
                pairs.len() - 1
            });
            let (_, title, at) = &mut pairs[index];
            if at[f].is_none() {
                at[f] = Some(c);
                if !title.split(" / ").any(|known| known == component.title) {
                    *title = format!("{title} / {}", component.title);
                }
            }
        }
    }
    pairs.into_iter().map(|(_, title, at)| (title, at)).collect()
}

fn makes(formulas: &[&Formula], at: &[Option<usize>], overalls: &[Option<Overall>]) -> Vec<Row> {
    let of = |take: &dyn Fn(&formula::resolve::formula::Yield) -> Option<f64>| -> Vec<Option<Known<f64>>> {
        let each = formulas.iter().zip(at).map(|(one, at)| take(&one.components[(*at)?].yields));
        each.map(|value| value.map(|value| Known::computed(value, "the formula's yield", "the formula"))).collect()
    };
    let flour = overalls.iter().map(|one| one.as_ref().map(|one| told(one.total_flour.as_grams()))).collect();
    vec![
        Row::new("pieces".to_owned(), Unit::Pieces, of(&|one| one.pieces.map(quantity::Count::as_pieces)), Step::Share(0.1)),
        Row::new("a piece, raw".to_owned(), Unit::Grams, of(&|one| one.scaling_weight.map(Mass::as_grams)), Step::Share(0.05)),
        Row::new("all of it, raw".to_owned(), Unit::Grams, of(&|one| Some(one.raw().as_grams())), Step::Share(0.05)),
        Row::new("all of it, done".to_owned(), Unit::Grams, of(&|one| Some(one.done().as_grams())), Step::Share(0.05)),
        Row::new("total flour".to_owned(), Unit::Grams, flour, Step::Share(0.05)),
    ]
    .into_iter()
    .filter(Row::says_something)
    .collect()
}

fn told(value: f64) -> Known<f64> {
    Known::computed(value, "the overall formula", "the formula")
}

/// Every ingredient of any of the formulas as a share of all flour; in gram where one has no flour.
fn ingredients(overalls: &[Option<Overall>]) -> Vec<Row> {
    let has_flour = overalls.iter().flatten().all(|one| one.total_flour > Mass::ZERO);
    let mut titles: Vec<(&str, &RowKind)> = Vec::new();
    for row in overalls.iter().flatten().flat_map(|one| &one.rows) {
        if !titles.iter().any(|(key, kind)| *key == key_of(&row.kind) && is_flour(kind) == is_flour(&row.kind)) {
            titles.push((key_of(&row.kind), &row.kind));
        }
    }
    // The trade's order, which each overall formula has already, over all of them.
    titles.sort_by_key(|(_, kind)| rank(kind));
    let row = |(key, kind): &(&str, &RowKind)| {
        let share = |one: &Overall| {
            let row = one.rows.iter().find(|row| key_of(&row.kind) == *key && is_flour(&row.kind) == is_flour(kind));
            let mass = row.map_or(Mass::ZERO, |row| row.mass);
            if has_flour { mass / one.total_flour * 100.0 } else { mass.as_grams() }
        };
        let cells = overalls.iter().map(|one| one.as_ref().map(|one| told(share(one)))).collect();
        let unit = if has_flour { Unit::PercentOfFlour } else { Unit::Grams };
        Row::new(told_apart(kind, &titles), unit, cells, if has_flour { step(kind) } else { Step::Share(0.1) })
    };
    titles.iter().map(row).collect()
}

/// What a recipe calls it, or its full title where another one is called the same.
fn told_apart(kind: &RowKind, all: &[(&str, &RowKind)]) -> String {
    let is_alone = all.iter().filter(|(_, other)| other.title() == kind.title()).count() == 1;
    let full = kind.ingredient().filter(|_| !is_alone).map(|one| one.title.clone());
    full.unwrap_or_else(|| kind.title().to_owned())
}

fn key_of(kind: &RowKind) -> &str {
    kind.ingredient().map_or_else(|| kind.title(), |one| one.name.as_str())
}

const fn is_flour(kind: &RowKind) -> bool {
    matches!(kind, RowKind::Flour(_))
}

fn rank(kind: &RowKind) -> u8 {
    match kind {
        RowKind::Flour(_) => 0,
        RowKind::Ingredient(one) if one.is_water() => 1,
        RowKind::Ingredient(one) if one.group == Group::Salt => 2,
        RowKind::Ingredient(one) if one.is_alive() => 3,
        RowKind::Ingredient(_) => 4,
        RowKind::ReadyMade(_) => 5,
    }
}

/// How much of an ingredient is noticed, in percent of all flour: common practice, no source.
fn step(kind: &RowKind) -> Step {
    let RowKind::Ingredient(one) = kind else { return Step::Points(5.0) };
    match one.group {
        _ if one.is_alive() => Step::Share(0.2),
        _ if one.is_water() || one.is_milk() => Step::Points(2.0),
        Group::Salt => Step::Points(0.2),
        Group::Spice | Group::Leaven => Step::Share(0.2),
        _ => Step::Points(2.0),
    }
}

fn shares(overalls: &[Option<Overall>]) -> Vec<Row> {
    let all: Vec<Option<(Fraction, Figures)>> =
        overalls.iter().map(|one| one.as_ref().and_then(|one| Some((one.prefermented, figures(one)?)))).collect();
    let row = |title: &str, step: Step, take: &dyn Fn(&(Fraction, Figures)) -> Option<Fraction>| {
        let cells = all.iter().map(|one| one.as_ref().and_then(take).map(|share| told(share.as_percent()))).collect();
        Row::new(title.to_owned(), Unit::PercentOfFlour, cells, step)
    };
    let mut yeast = row("yeast, as instant dry yeast", Step::Share(0.2), &|one| {
        Some(one.1.leaven.as_ref().map_or(Fraction::ZERO, |leaven| leaven.0))
    });
    for (cell, one) in yeast.cells.iter_mut().zip(&all) {
        let spread = one
            .as_ref()
            .and_then(|one| one.1.leaven.as_ref())
            .map(|(_, spread)| (spread.from.as_percent(), spread.to.as_percent()));
        if let (Some(cell), Some(spread)) = (cell, spread) {
            cell.band = (spread.0 < spread.1).then_some(spread);
        }
    }
    vec![
        row("prefermented flour", Step::Points(5.0), &|one| Some(one.0)),
        row("hydration, water alone", Step::Points(2.0), &|one| Some(one.1.nominal_hydration)),
        row("hydration, true", Step::Points(2.0), &|one| Some(one.1.true_hydration.value)),
        row("salt", Step::Points(0.2), &|one| Some(one.1.salt)),
        row("sugars", Step::Points(2.0), &|one| Some(one.1.sugars.value)),
        row("fat", Step::Points(2.0), &|one| Some(one.1.fat.value)),
        row("egg", Step::Points(3.0), &|one| Some(one.1.egg)),
        row("milk solids", Step::Points(1.0), &|one| Some(one.1.milk_solids.value)),
        yeast,
        row("protein of the flour", Step::Points(0.5), &|one| Some(one.1.flour_protein.value)),
    ]
    .into_iter()
    .filter(Row::says_something)
    .collect()
}
