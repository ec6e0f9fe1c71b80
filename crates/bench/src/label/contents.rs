//! What a food holds of each figure: what its sources tell, and at most how much they leave untold.

use super::finished::Food;
use formula::Ingredient;
use formula::ingredient::{Composition, Figure};
use formula::read::Group;
use quantity::Mass;

/// How much of a figure is in something.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Held {
    /// What sources tell.
    pub told: f64,
    /// The most it can be, with what they leave untold; without end where nothing bounds it.
    pub most: f64,
    /// For which ingredients they leave it untold.
    pub untold: Vec<String>,
}

impl Held {
    /// The same in a part of the food.
    #[must_use]
    pub fn times(&self, share: f64) -> Self {
        Self { told: self.told * share, most: self.most * share, untold: self.untold.clone() }
    }

    /// Both together, the second weighted.
    #[must_use]
    pub fn plus(mut self, other: &Self, weight: f64) -> Self {
        self.told += other.told * weight;
        self.most += other.most * weight;
        for name in &other.untold {
            if !self.untold.contains(name) {
                self.untold.push(name.clone());
            }
        }
        self
    }
}

/// How much of a figure is in all of a food, in the figure's own unit.
#[must_use]
pub fn held(food: &Food, figure: Figure) -> Held {
    sum(food, |_| true, figure)
}

/// The sugars that count as added.
#[must_use]
pub fn added_sugars(food: &Food) -> Held {
    sum(food, |one| one.added_sugar, Figure::Sugars)
}

fn sum(food: &Food, counts: impl Fn(&Ingredient) -> bool, figure: Figure) -> Held {
    let mut all = Held::default();
    for (one, mass) in food.singles().into_iter().filter(|(one, mass)| counts(one) && *mass > Mass::ZERO) {
        let hundreds = mass.as_grams() / 100.0;
        match value(one, figure) {
            Some(value) => (all.told, all.most) = (all.told + value * hundreds, all.most + value * hundreds),
            None => {
                all.most += at_most(&one.composition, figure) * hundreds;
                if !all.untold.contains(&one.called) {
                    all.untold.push(one.called.clone());
                }
            }
        }
    }
    all
}

/// A figure as labels mean it: carbohydrate with fibre also where a source gives both apart; no cholesterol in what is
/// no animal's, no alcohol in what is no drink.
fn value(one: &Ingredient, figure: Figure) -> Option<f64> {
    let of = &one.composition;
    let is_drink = matches!(one.group, Group::Liquid | Group::Spirit | Group::Other);
    let may_be_animal = matches!(one.group, Group::Dairy | Group::Egg | Group::Fat | Group::Chocolate | Group::Other);
    of.told(figure).or_else(|| match figure {
        Figure::Carbohydrate => Some(of.get(Figure::AvailableCarbohydrate)? + of.get(Figure::Fibre)?),
        Figure::Alcohol if !is_drink => Some(0.0),
        Figure::Cholesterol if !may_be_animal => Some(0.0),
        _ => None,
    })
}

/// The most that 100 g can hold of a figure that is not told: its whole, or what the told figures leave of 100 g.
/// Analyses do not add up to 100 g exactly; a gram is allowed for that.
fn at_most(of: &Composition, figure: Figure) -> f64 {
    let rest = (100.0 - of.sum()).max(0.0) + 1.0;
    match figure {
        Figure::Saturates | Figure::Trans => of.told(Figure::Fat).unwrap_or(rest),
        Figure::Sugars | Figure::Fibre => of.told(Figure::Carbohydrate).unwrap_or(rest),
        Figure::AvailableCarbohydrate => of.told(Figure::Carbohydrate).unwrap_or(rest),
        // A seventh more than by the food's own factor is the widest that tables show: 6.25 over 5.3 of nuts is 1.18.
        Figure::ProteinLabel => of.told(Figure::Protein).map_or(rest, |protein| protein * 1.2),
        Figure::Fat | Figure::Protein | Figure::Carbohydrate | Figure::Alcohol => rest,
        _ => f64::INFINITY,
    }
}
