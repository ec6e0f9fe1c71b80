//! What a component's product holds, as far as the sources of its ingredients tell.

use super::figures::Missing;
use super::weighed::weighed;
use crate::ingredient::{Figure, Ingredient};
use crate::resolve::formula::{Content, Formula};
use quantity::Mass;
use std::collections::BTreeSet;

/// The composition of a component's product before baking, as what was weighed into it tells.
#[derive(Clone, Debug)]
pub struct Mixture {
    /// What was weighed in, less what was taken out again.
    pub ingoing: Mass,
    /// Codes of all allergens that went in, whether or not they were taken out again.
    pub allergens: BTreeSet<String>,
    /// Whether alcohol went in.
    pub alcohol: bool,
    totals: Vec<(Figure, f64, Vec<Missing>)>,
}

impl Mixture {
    /// How much of something the whole holds, in the figure's own unit, and what is missing.
    #[must_use]
    pub fn total(&self, figure: Figure) -> (f64, &[Missing]) {
        let (_, total, missing) = &self.totals[figure as usize];
        (*total, missing)
    }
}

/// Works out what a component's product holds; other components and formulas are followed to their ingredients.
#[must_use]
pub fn mixture(formula: &Formula, component: usize) -> Mixture {
    let mut mix = Mixture {
        ingoing: Mass::ZERO,
        allergens: BTreeSet::new(),
        alcohol: false,
        totals: Figure::ALL.iter().map(|figure| (*figure, 0.0, Vec::new())).collect(),
    };
    for part in weighed(formula, component) {
        let kept = part.mass * part.line.taken_out.left();
        match &part.line.content {
            Content::Ingredient(ingredient) => mix.add(ingredient, kept),
            Content::Formula(blend) => blend.ingredients.iter().for_each(|(one, _, grams)| mix.add(one, kept * *grams)),
            Content::Stage(..) => {}
        }
    }
    mix
}

impl Mixture {
    fn add(&mut self, ingredient: &Ingredient, mass: Mass) {
        self.ingoing += mass;
        self.allergens.extend(ingredient.allergens.iter().cloned());
        self.alcohol |= ingredient.is_alcoholic();
        for (figure, total, missing) in &mut self.totals {
            match ingredient.composition.told(*figure) {
                Some(value) => *total += value * mass.as_grams() / 100.0,
                None => {
                    let lacking = Missing { ingredient: ingredient.called.clone(), figure: figure.title() };
                    if !missing.contains(&lacking) {
                        missing.push(lacking);
                    }
                }
            }
        }
    }
}
