//! The figures a baker reads a formula by: hydration nominal and true, salt, sugars, fat, leaven.

use super::overall::{Overall, RowKind};
use crate::ingredient::{Figure, Ingredient};
use crate::read::Group;
use quantity::{Between, Fraction, Mass};
use science::measure::yeast::{Form, equivalent};

/// The figures of a component with flour, as shares of its total flour.
#[derive(Clone, Debug)]
pub struct Figures {
    /// Plain water alone, a culture's counted in.
    pub nominal_hydration: Fraction,
    /// The water of everything but flour: milk, egg, butter, fruit, honey.
    pub true_hydration: Counted,
    /// Salt.
    pub salt: Fraction,
    /// Sugars of everything but flour.
    pub sugars: Counted,
    /// Fat of everything but flour.
    pub fat: Counted,
    /// Whole egg, yolk and white.
    pub egg: Fraction,
    /// What milk and cream hold besides water and fat.
    pub milk_solids: Counted,
    /// All yeast as instant yeast, by the usual ratios and as sources differ.
    pub leaven: Option<(Fraction, Between<Fraction>)>,
    /// Protein of the flour blend, as a share of the flour.
    pub flour_protein: Counted,
}

/// A figure that some ingredients may lack.
#[derive(Clone, Debug)]
pub struct Counted {
    /// What can be told.
    pub value: Fraction,
    /// The ingredients for which no source gives it, so that the truth is higher.
    pub missing: Vec<Missing>,
}

/// An ingredient without a figure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// What a recipe calls the ingredient.
    pub ingredient: String,
    /// What is not known of it.
    pub figure: &'static str,
}

/// Works out the figures; none for a component without flour.
#[must_use]
pub fn figures(overall: &Overall) -> Option<Figures> {
    let flour = overall.total_flour;
    if flour <= Mass::ZERO {
        return None;
    }
    let share = |mass: Mass| Fraction::ratio(mass / flour);
    let sum_of =
        |test: &dyn Fn(&Ingredient) -> bool| share(others(overall).filter(|(one, _)| test(one)).map(|(_, mass)| mass).sum());
    let total = |figure: Figure| {
        let mut missing = ready_made(overall, figure);
        let mass = others(overall).map(|(one, mass)| part(one, figure, mass, &mut missing)).sum();
        Counted { value: share(mass), missing }
    };
    Some(Figures {
        nominal_hydration: sum_of(&Ingredient::is_water),
        true_hydration: total(Figure::Water),
        salt: sum_of(&|one| one.group == Group::Salt),
        sugars: total(Figure::Sugars),
        fat: total(Figure::Fat),
        egg: sum_of(&|one| one.group == Group::Egg),
        milk_solids: milk_solids(overall, flour),
        leaven: leaven(overall, flour),
        flour_protein: flour_protein(overall, flour),
    })
}

/// Every row that is an ingredient but no flour.
fn others(overall: &Overall) -> impl Iterator<Item = (&Ingredient, Mass)> {
    overall.rows.iter().filter_map(|row| match &row.kind {
        RowKind::Ingredient(ingredient) => Some((ingredient.as_ref(), row.in_mix)),
        _ => None,
    })
}

/// Other components and formulas in the mix, whose figures are not counted here: never a zero.
fn ready_made(overall: &Overall, figure: Figure) -> Vec<Missing> {
    let rows = overall.rows.iter().filter(|row| matches!(row.kind, RowKind::ReadyMade(_)) && row.in_mix > Mass::ZERO);
    rows.map(|row| Missing { ingredient: row.kind.title().to_owned(), figure: figure.title() }).collect()
}

/// What a mass of an ingredient holds of something; nothing, with a note, where no source says.
fn part(ingredient: &Ingredient, figure: Figure, mass: Mass, missing: &mut Vec<Missing>) -> Mass {
    // The table's tap water leaves 0.1 g of minerals; a baker's water is water.
    if ingredient.is_water() && figure == Figure::Water {
        return mass;
    }
    match ingredient.composition.share(figure) {
        Some(share) => mass * share,
        None => {
            missing.push(Missing { ingredient: ingredient.called.clone(), figure: figure.title() });
            Mass::ZERO
        }
    }
}

fn milk_solids(overall: &Overall, flour: Mass) -> Counted {
    let mut missing = ready_made(overall, Figure::Water);
    let dairy = others(overall).filter(|(one, _)| one.group == Group::Dairy);
    let solids: Mass = dairy
        .map(|(one, mass)| mass - part(one, Figure::Water, mass, &mut missing) - part(one, Figure::Fat, mass, &mut missing))
        .sum();
    Counted { value: Fraction::ratio(solids / flour), missing }
}

fn leaven(overall: &Overall, flour: Mass) -> Option<(Fraction, Between<Fraction>)> {
    let (mut usual, mut low, mut high) = (Mass::ZERO, Mass::ZERO, Mass::ZERO);
    for (ingredient, mass) in others(overall) {
        let Some(form) = ingredient.yeast() else { continue };
        let as_instant = equivalent(mass, form, Form::Instant);
        usual += as_instant.usual;
        low += as_instant.spread.from;
        high += as_instant.spread.to;
    }
    let share = |mass: Mass| Fraction::ratio(mass / flour);
    (usual > Mass::ZERO).then(|| (share(usual), Between { from: share(low), to: share(high) }))
}

fn flour_protein(overall: &Overall, flour: Mass) -> Counted {
    let mut missing = Vec::new();
    let flours = overall.rows.iter().filter_map(|row| match &row.kind {
        RowKind::Flour(ingredient) => Some((ingredient, row.mass)),
        _ => None,
    });
    let protein: Mass = flours.map(|(one, mass)| part(one, Figure::Protein, mass, &mut missing)).sum();
    Counted { value: Fraction::ratio(protein / flour), missing }
}
