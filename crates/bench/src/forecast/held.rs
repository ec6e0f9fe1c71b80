//! What a stage's product holds that thickens, sweetens and keeps it: water, sugars, salt, fat, alcohol.

use formula::ingredient::Figure;
use formula::resolve::formula::{Content, StageAt};
use formula::{Formula, Ingredient};
use quantity::{Fraction, Mass};
use science::keeping::water_activity::mixture::{Mixture, water_activity};
use science::keeping::water_activity::solute::{Dissolved, named};
use std::collections::BTreeMap;

/// Masses in a product.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    pub total: Mass,
    pub water: Mass,
    pub sucrose: Mass,
    pub glucose: Mass,
    pub fructose: Mass,
    pub salt: Mass,
    pub fat: Mass,
    pub ethanol: Mass,
    /// The steam that has left it.
    pub steam: Mass,
    /// What came without a figure for its water: the rest is then only an estimate.
    pub untold: Mass,
}

/// The products of a formula's stages as far as they were asked for.
#[derive(Debug, Default)]
pub struct Products(BTreeMap<StageAt, Held>);

impl Products {
    /// What went into a stage, less what was taken out again; before it boils.
    pub fn mixed(&mut self, formula: &Formula, at: StageAt) -> Held {
        self.work_out(formula, at);
        self.mixture(formula, at)
    }

    /// What comes out of a stage: less steam, whatever is lost is lost of everything alike.
    pub fn made(&mut self, formula: &Formula, at: StageAt) -> Held {
        self.work_out(formula, at);
        self.0.get(&at).copied().unwrap_or_default()
    }

    /// Each stage once, after those that it uses; stages do not go in circles.
    fn work_out(&mut self, formula: &Formula, at: StageAt) {
        let mut way = vec![at];
        while let Some(here) = way.last().copied() {
            let before = way.len();
            way.extend(formula.stage(here).uses().filter(|used| !self.0.contains_key(used)));
            if way.len() == before {
                let stage = formula.stage(here);
                let mut made = self.mixture(formula, here);
                made.boil_off(stage.mixed() * stage.boil_off);
                self.0.insert(here, made);
                way.pop();
            }
        }
    }

    fn mixture(&self, formula: &Formula, at: StageAt) -> Held {
        let mut held = Held::default();
        for line in &formula.stage(at).lines {
            let mass = line.mass.value * line.taken_out.left();
            match &line.content {
                Content::Ingredient(one) => held.add(one, mass),
                Content::Formula(blend) => blend.ingredients.iter().for_each(|(one, _, grams)| held.add(one, mass * *grams)),
                Content::Stage(c, s) => {
                    let other = self.0.get(&(*c, *s)).copied().unwrap_or_default();
                    if other.total > Mass::ZERO {
                        held.join(&other, mass / other.total);
                    }
                }
            }
        }
        held
    }
}

impl Held {
    fn add(&mut self, ingredient: &Ingredient, mass: Mass) {
        let share = |figure| ingredient.composition.share(figure);
        let holds = |figure| mass * share(figure).unwrap_or_default();
        self.total += mass;
        self.water += holds(Figure::Water);
        self.fat += holds(Figure::Fat);
        self.ethanol += holds(Figure::Alcohol);
        self.glucose += holds(Figure::Glucose);
        self.fructose += holds(Figure::Fructose);
        // Where a source gives sugars but not which, most are sucrose.
        let (single, all) = (share(Figure::Sucrose), holds(Figure::Sugars));
        let others = holds(Figure::Glucose) + holds(Figure::Fructose);
        self.sucrose += if single.is_some() { holds(Figure::Sucrose) } else { (all - others).max(Mass::ZERO) };
        self.salt += science::nutrition::salt::from_sodium(mass * (sodium(ingredient) / 100_000.0));
        if share(Figure::Water).is_none() {
            self.untold += mass;
        }
    }

    fn join(&mut self, other: &Self, share: f64) {
        let parts = [
            (&mut self.total, other.total),
            (&mut self.water, other.water),
            (&mut self.sucrose, other.sucrose),
            (&mut self.glucose, other.glucose),
            (&mut self.fructose, other.fructose),
            (&mut self.salt, other.salt),
            (&mut self.fat, other.fat),
            (&mut self.ethanol, other.ethanol),
            (&mut self.steam, other.steam),
            (&mut self.untold, other.untold),
        ];
        for (own, more) in parts {
            *own += more * share;
        }
    }

    /// Lets water go; what was never there cannot.
    pub fn boil_off(&mut self, water: Mass) {
        let gone = if water < self.water { water } else { self.water };
        self.water = self.water - gone;
        self.total = self.total - gone;
        self.steam += gone;
    }

    /// All sugars.
    #[must_use]
    pub fn sugars(&self) -> Mass {
        self.sucrose + self.glucose + self.fructose
    }

    /// Sugars as a share of sugars and water: what a refractometer reads of a clear syrup.
    #[must_use]
    pub fn brix(&self) -> Fraction {
        let syrup = self.sugars() + self.water;
        if syrup > Mass::ZERO { Fraction::ratio(self.sugars() / syrup) } else { Fraction::ZERO }
    }

    /// The water activity of what is dissolved, an upper estimate.
    #[must_use]
    pub fn water_activity(&self) -> Fraction {
        let solutes = self.dissolved();
        water_activity(&Mixture { water: self.water, solutes: &solutes, salt: self.salt, ethanol: self.ethanol })
    }

    /// The sugars for the equations of syrups.
    #[must_use]
    pub fn dissolved(&self) -> Vec<Dissolved<'static>> {
        let sugars = [("sucrose", self.sucrose), ("glucose", self.glucose), ("fructose", self.fructose)];
        let present = sugars.into_iter().filter(|(_, mass)| *mass > Mass::ZERO);
        present.filter_map(|(name, mass)| Some(Dissolved { solute: named(name)?, mass })).collect()
    }
}

/// Milligram of sodium in 100 g.
fn sodium(ingredient: &Ingredient) -> f64 {
    ingredient.composition.get(Figure::Sodium).unwrap_or(0.0)
}
