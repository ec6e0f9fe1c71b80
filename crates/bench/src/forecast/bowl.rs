//! What is in the bowl when a stage is mixed, as the ferment sees it.

use formula::ingredient::Figure;
use formula::read::{Leaven as Raises, StageKind};
use formula::resolve::formula::Content;
use formula::{Formula, Ingredient, Line, Stage};
use quantity::{Fraction, Mass};
use science::ferment::{Dough, DoughKind, Hold, Yeast, YeastForm};

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

impl Bowl {
    /// Everything that is mixed in a stage, what other stages brought included.
    pub fn of(formula: &Formula, stage: &Stage) -> Self {
        let mut bowl = Self::default();
        for line in &stage.lines {
            bowl.add_line(formula, line, 1.0, 0);
        }
        bowl
    }

    fn add_line(&mut self, formula: &Formula, line: &Line, share: f64, depth: usize) {
        let mass = line.mass.value * line.taken_out.left() * share;
        match &line.content {
            Content::Ingredient(ingredient) => {
                for (single, part) in ingredient.singles() {
                    let is_culture = ingredient.leaven == Some(Raises::Culture);
                    let is_flour = line.is_flour || (is_culture && single.counts_as_flour);
                    self.add(&single, mass * part, is_flour);
                    if is_culture && single.counts_as_flour {
                        self.culture_flour += mass * part;
                    }
                }
            }
            Content::Formula(blend) => {
                blend.ingredients.iter().for_each(|(one, flour, grams)| self.add(one, mass * *grams, *flour))
            }
            // Stages do not go in circles, so this ends; the bound is for chains nobody bakes.
            Content::Stage(c, s) if depth < 32 => {
                let other = &formula.components[*c].stages[*s];
                let made = other.made();
                if made <= Mass::ZERO {
                    return;
                }
                let mut inner = Self::default();
                for line in &other.lines {
                    inner.add_line(formula, line, 1.0, depth + 1);
                }
                if other.kind.is_preferment() {
                    // Its sugars were its own food.
                    (inner.sucrose, inner.hexose) = (Mass::ZERO, Mass::ZERO);
                }
                self.join(&inner, mass / made);
            }
            Content::Stage(..) => {}
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
        let is_milk = ingredient.group == "dairy" && ingredient.composition.share(Figure::Water) > Some(Fraction::percent(80.0));
        match ingredient.group.as_str() {
            _ if is_flour => self.flour += mass,
            _ if ingredient.is_water() => self.water += mass,
            _ if is_milk => self.milk += mass,
            "egg" => self.egg += mass,
            "salt" => self.salt += mass,
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
    let form = |ingredient: &Ingredient| match ingredient.leaven {
        Some(Raises::FreshYeast) => Some(YeastForm::Fresh),
        Some(Raises::ActiveDryYeast) => Some(YeastForm::ActiveDry),
        Some(Raises::InstantYeast) => Some(YeastForm::Instant),
        _ => None,
    };
    let one = |line: &Line| match &line.content {
        Content::Ingredient(ingredient) => Some(Yeast { form: form(ingredient)?, mass: line.mass.value }),
        _ => None,
    };
    stage.lines.iter().filter_map(one).collect()
}
