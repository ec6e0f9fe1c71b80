//! What is in the food as it is sold: everything as it was put in, and what left it.

use formula::resolve::formula::{Content, StageAt};
use formula::{Formula, Ingredient, Line};
use quantity::Mass;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::Arc;

/// A food, or what became an ingredient of one.
#[derive(Clone, Debug, Default)]
pub struct Food {
    /// What was put in and stayed, as it weighed then.
    pub parts: Vec<Part>,
    /// The water that heat drove off.
    pub steam: Mass,
}

/// Something that was put into a food.
#[derive(Clone, Debug)]
pub struct Part {
    /// How the formula calls it.
    pub name: String,
    /// How a list of ingredients calls it.
    pub title: String,
    /// What it weighed when it was put in, less what was taken out again.
    pub mass: Mass,
    /// What it is.
    pub what: What,
}

/// What was put in.
#[derive(Clone, Debug)]
pub enum What {
    /// A single thing.
    Ingredient(Arc<Ingredient>),
    /// Something made of several.
    Compound(Food),
}

impl Food {
    /// What it weighs.
    #[must_use]
    pub fn weighs(&self) -> Mass {
        (self.parts.iter().map(|part| part.mass).sum::<Mass>() - self.steam).max(Mass::ZERO)
    }

    /// Every single ingredient in it with its weight, compounds followed down.
    #[must_use]
    pub fn singles(&self) -> Vec<(&Arc<Ingredient>, Mass)> {
        let mut all = Vec::new();
        let mut open: Vec<&Part> = self.parts.iter().rev().collect();
        while let Some(part) = open.pop() {
            match &part.what {
                What::Ingredient(one) => all.push((one, part.mass)),
                What::Compound(food) => open.extend(food.parts.iter().rev()),
            }
        }
        all
    }

    /// Everything in it scaled alike.
    fn scaled(&self, by: f64) -> Self {
        Self { parts: self.parts.iter().map(|part| part.scaled(by)).collect(), steam: self.steam * by }
    }

    /// Water that leaves: no more than all of it weighs.
    fn drive_off(&mut self, water: Mass) {
        self.steam += if water < self.weighs() { water } else { self.weighs() };
    }

    fn join(&mut self, other: Self) {
        self.parts.extend(other.parts);
        self.steam += other.steam;
    }

    /// Each thing once, however many lines brought it.
    fn merged(self) -> Self {
        let mut merged: BTreeMap<(String, String, bool), Part> = BTreeMap::new();
        for part in self.parts {
            let is_compound = matches!(part.what, What::Compound(_));
            match merged.entry((part.name.clone(), part.title.clone(), is_compound)) {
                Entry::Vacant(free) => {
                    free.insert(part);
                }
                Entry::Occupied(mut there) => there.get_mut().add(part),
            }
        }
        Self { parts: merged.into_values().collect(), steam: self.steam }
    }

    /// Compounds that stand no deeper than so many brackets; what stands deeper stands among its neighbours.
    fn at_most_deep(self, brackets: usize) -> Self {
        let mut food = Self { parts: Vec::new(), steam: self.steam };
        for part in self.parts {
            match part.what {
                What::Compound(inner) if brackets == 0 => food.join(inner.at_most_deep(0)),
                What::Compound(inner) => {
                    food.parts.push(Part { what: What::Compound(inner.at_most_deep(brackets - 1)), ..part });
                }
                What::Ingredient(_) => food.parts.push(part),
            }
        }
        food.merged()
    }
}

impl Part {
    /// More of the same.
    fn add(&mut self, more: Self) {
        self.mass += more.mass;
        if let (What::Compound(own), What::Compound(other)) = (&mut self.what, more.what) {
            let mut both = std::mem::take(own);
            both.join(other);
            *own = both.merged();
        }
    }

    fn scaled(&self, by: f64) -> Self {
        let what = match &self.what {
            What::Ingredient(one) => What::Ingredient(Arc::clone(one)),
            What::Compound(food) => What::Compound(food.scaled(by)),
        };
        Self { mass: self.mass * by, what, ..self.clone() }
    }
}

/// A component as it is sold, its losses taken off.
#[must_use]
pub fn finished(formula: &Formula, component: usize) -> Food {
    let of = &formula.components[component];
    let Some(last) = of.stages.len().checked_sub(1) else { return Food::default() };
    let mut making = Making { formula, made: BTreeMap::new() };
    making.work_out((component, last));
    let mut food = making.mixed((component, last), |line| !line.after_scaling);
    let stage = &of.stages[last];
    food.drive_off(stage.mixed() * stage.boil_off);
    let kept = food.weighs();
    let share = if kept > Mass::ZERO { (of.yields.raw() / kept).clamp(0.0, 1.0) } else { 0.0 };
    let mut food = food.scaled(share);
    food.drive_off(of.yields.raw() * of.yields.bake_loss);
    // What is added once the pieces are scaled meets no more loss.
    food.join(making.mixed((component, last), |line| line.after_scaling));
    food.merged()
}

struct Making<'f> {
    formula: &'f Formula,
    made: BTreeMap<StageAt, Food>,
}

impl Making<'_> {
    /// Each stage that a stage is made from, after those that it is made from itself.
    fn work_out(&mut self, at: StageAt) {
        let mut way: Vec<StageAt> = self.formula.stage(at).uses().collect();
        while let Some(here) = way.last().copied() {
            let before = way.len();
            way.extend(self.formula.stage(here).uses().filter(|used| !self.made.contains_key(used)));
            if way.len() == before {
                let stage = self.formula.stage(here);
                let mut food = self.mixed(here, |_| true);
                food.drive_off(stage.mixed() * stage.boil_off);
                self.made.insert(here, food);
                way.pop();
            }
        }
    }

    /// What goes into a stage and is not taken out again.
    fn mixed(&self, at: StageAt, counts: impl Fn(&Line) -> bool) -> Food {
        let mut food = Food::default();
        for line in self.formula.stage(at).lines.iter().filter(|line| counts(line)) {
            let mass = line.mass.value * line.taken_out.left();
            match &line.content {
                Content::Ingredient(one) => food.parts.push(ingredient(line, one, mass)),
                Content::Formula(blend) => {
                    let parts = blend.ingredients.iter().map(|(one, _, grams)| single(one, None, mass * *grams)).collect();
                    let gone = mass * (blend.ingredients.iter().map(|(.., grams)| grams).sum::<f64>() - 1.0).max(0.0);
                    food.parts.push(compound(&line.name, &line.title, mass, Food { parts, steam: gone }));
                }
                Content::Stage(c, s) => {
                    let made = self.made.get(&(*c, *s)).cloned().unwrap_or_default();
                    let weighs = made.weighs();
                    let made = made.scaled(if weighs > Mass::ZERO { mass / weighs } else { 0.0 });
                    if *c == at.0 {
                        food.join(made);
                    } else {
                        // A bracket within a bracket is as deep as anyone reads.
                        food.parts.push(compound(&self.formula.components[*c].name, &line.title, mass, made.at_most_deep(1)));
                    }
                }
            }
        }
        food.merged()
    }
}

/// What a line puts in; what is mixed itself, such as a culture, by its parts.
fn ingredient(line: &Line, one: &Arc<Ingredient>, mass: Mass) -> Part {
    let own_title = (line.title != one.called).then_some(line.title.as_str());
    if one.parts.is_empty() {
        return Part { name: line.name.clone(), ..single(one, own_title, mass) };
    }
    let parts = one.parts.iter().map(|(part, share)| single(part, None, mass * *share)).collect();
    compound(&line.name, own_title.unwrap_or(&one.called), mass, Food { parts, steam: Mass::ZERO })
}

fn single(one: &Arc<Ingredient>, own_title: Option<&str>, mass: Mass) -> Part {
    let title = one.declared.as_deref().or(own_title).unwrap_or(&one.called).to_owned();
    Part { name: one.name.clone(), title, mass, what: What::Ingredient(Arc::clone(one)) }
}

/// Something made of several things.
#[must_use]
pub fn compound(name: &str, title: &str, mass: Mass, food: Food) -> Part {
    Part { name: name.to_owned(), title: title.to_owned(), mass, what: What::Compound(food) }
}
