//! What is in the bowl when a stage is mixed, as the ferment sees it.

use formula::ingredient::Figure;
use formula::read::{Group, Leaven as Raises, StageKind};
use formula::resolve::formula::{Content, StageAt};
use formula::{Formula, Ingredient, Line, Stage};
use quantity::Mass;
use science::ferment::{Dough, DoughKind, Hold, Yeast};
use std::collections::BTreeMap;

/// Masses in a bowl.
#[derive(Clone, Copy, Debug, Default)]
pub struct Bowl {
    pub flour: Mass,
    /// Flour that a ripe culture brings.
    pub culture_flour: Mass,
    pub water: Mass,
    pub milk: Mass,
    pub egg: Mass,
    pub fat: Mass,
    pub sucrose: Mass,
    pub hexose: Mass,
    pub salt: Mass,
}

/// The bowls of a formula's stages as far as they were asked for.
#[derive(Debug, Default)]
pub struct Bowls(BTreeMap<StageAt, Bowl>);

impl Bowls {
    /// Everything that is mixed in a stage, what other stages brought included. Each stage is worked out
    /// once, after those it uses; stages do not go in circles.
    pub fn of(&mut self, formula: &Formula, at: StageAt) -> Bowl {
        let mut way = vec![at];
        while let Some(here) = way.last().copied() {
            let before = way.len();
            way.extend(formula.stage(here).uses().filter(|used| !self.0.contains_key(used)));
            if way.len() == before {
                let bowl = self.mixed(formula, formula.stage(here));
                self.0.insert(here, bowl);
                way.pop();
            }
        }
        self.0.get(&at).copied().unwrap_or_default()
    }

    fn mixed(&self, formula: &Formula, stage: &Stage) -> Bowl {
        let mut bowl = Bowl::default();
        for line in &stage.lines {
            match &line.content {
                Content::Stage(c, s) => {
                    let other = formula.stage((*c, *s));
                    bowl.join(
                        &self.product((*c, *s), other.kind),
                        other.share(line.mass.value) * line.taken_out.left().as_ratio(),
                    );
                }
                _ => bowl.add_line(line),
            }
        }
        bowl
    }

    /// What a stage hands on; the sugars of a preferment were its own food.
    fn product(&self, at: StageAt, kind: StageKind) -> Bowl {
        let bowl = self.0.get(&at).copied().unwrap_or_default();
        if kind.is_preferment() { Bowl { sucrose: Mass::ZERO, hexose: Mass::ZERO, ..bowl } } else { bowl }
    }
}

impl Bowl {
    fn add_line(&mut self, line: &Line) {
        let mass = line.mass.value * line.taken_out.left();
        if let Content::Formula(blend) = &line.content {
            blend.ingredients.iter().for_each(|(one, flour, grams)| self.add(one, mass * *grams, *flour));
        }
        let Some(ingredient) = line.ingredient() else { return };
        let is_culture = ingredient.leaven == Some(Raises::Culture);
        for (single, part) in ingredient.singles() {
            let is_cultures_flour = is_culture && single.counts_as_flour;
            self.add(&single, mass * part, line.is_flour || is_cultures_flour);
            if is_cultures_flour {
                self.culture_flour += mass * part;
            }
        }
    }

    fn join(&mut self, other: &Self, share: f64) {
        let parts = [
            (&mut self.flour, other.flour),
            (&mut self.culture_flour, other.culture_flour),
            (&mut self.water, other.water),
            (&mut self.milk, other.milk),
            (&mut self.egg, other.egg),
            (&mut self.fat, other.fat),
            (&mut self.sucrose, other.sucrose),
            (&mut self.hexose, other.hexose),
            (&mut self.salt, other.salt),
        ];
        for (own, more) in parts {
            *own += more * share;
        }
    }

    fn add(&mut self, ingredient: &Ingredient, mass: Mass, is_flour: bool) {
        let holds = |figure| mass * ingredient.composition.share(figure).unwrap_or_default();
        match ingredient.group {
            _ if is_flour => self.flour += mass,
            _ if ingredient.is_water() => self.water += mass,
            _ if ingredient.is_milk() => self.milk += mass,
            Group::Egg => self.egg += mass,
            Group::Salt => self.salt += mass,
            _ => {
                self.water += holds(Figure::Water);
                self.fat += holds(Figure::Fat);
                let (glucose, fructose) = (holds(Figure::Glucose), holds(Figure::Fructose));
                self.hexose += glucose + fructose;
                // Where a source gives sugars but not which, most are sucrose.
                let known = ingredient.composition.get(Figure::Sucrose).is_some();
                self.sucrose += if known { holds(Figure::Sucrose) } else { holds(Figure::Sugars) };
            }
        }
    }

    /// Water in all, milk's and egg's counted, against the flour.
    pub fn wetness(&self) -> f64 {
        (self.water + self.milk * 0.88 + self.egg * 0.76) / self.flour
    }

    /// The dough as the ferment sees it.
    pub fn dough(&self, kind: StageKind, is_culture_alone: bool) -> Dough {
        let hold = Hold::of(kind_of(kind, self.wetness(), is_culture_alone));
        let Self { flour, water, milk, egg, fat, sucrose, hexose, salt, .. } = *self;
        Dough { flour, water, milk, egg, fat, sucrose, hexose, salt, hold }
    }
}

/// Which kind of dough it is by its stage and how wet it is: the borders are common practice, no source.
fn kind_of(kind: StageKind, wetness: f64, is_culture_alone: bool) -> DoughKind {
    match (kind.is_preferment(), is_culture_alone) {
        (true, true) if wetness >= 0.85 => DoughKind::LiquidCulture,
        (true, true) => DoughKind::CultureDough,
        (true, false) if wetness >= 0.85 => DoughKind::Liquid,
        (true, false) if wetness < 0.6 => DoughKind::Stiff,
        (true, false) => DoughKind::Sponge,
        (false, _) if wetness >= 1.3 => DoughKind::ThinBatter,
        (false, _) if wetness >= 0.95 => DoughKind::Batter,
        (false, true) => DoughKind::CultureDough,
        (false, false) => DoughKind::Dough,
    }
}

/// The yeasts weighed into a stage.
pub fn yeasts(stage: &Stage) -> Vec<Yeast> {
    let one = |line: &Line| Some(Yeast { form: line.ingredient()?.yeast()?, mass: line.mass.value });
    stage.lines.iter().filter_map(one).collect()
}
