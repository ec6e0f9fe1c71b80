//! What is weighed in for a component's product, through all stages it is made by way of.

use crate::ingredient::Ingredient;
use crate::resolve::formula::{Blend, Content, Formula, Line, StageAt};
use quantity::Mass;
use std::collections::{BTreeMap, VecDeque};
use std::sync::Arc;

/// A line as far as it goes into a product: with the share of its stage that is used.
#[derive(Clone, Debug)]
pub struct Weighed<'f> {
    /// The line.
    pub line: &'f Line,
    /// The stage it stands in.
    pub stage: StageAt,
    /// How much of it goes into the product.
    pub mass: Mass,
}

/// All lines that go into a component's product, other components and formulas followed to their
/// ingredients only as lines of their own stages.
#[must_use]
pub fn weighed(formula: &Formula, component: usize) -> Vec<Weighed<'_>> {
    let mut all = Vec::new();
    for (at, share) in shares(formula, component) {
        for line in &formula.stage(at).lines {
            all.push(Weighed { line, stage: at, mass: line.mass.value * share });
        }
    }
    all
}

/// The share of each stage that goes into a component's product, in working order.
fn shares(formula: &Formula, component: usize) -> Vec<(StageAt, f64)> {
    let Some(last) = formula.components[component].stages.len().checked_sub(1) else { return Vec::new() };
    let users = users(formula, (component, last));
    let mut open: BTreeMap<StageAt, usize> = users.clone();
    let mut share: BTreeMap<StageAt, f64> = BTreeMap::from([((component, last), 1.0)]);
    let mut ready = VecDeque::from([(component, last)]);
    while let Some(at) = ready.pop_front() {
        let own = share.get(&at).copied().unwrap_or(0.0);
        for line in &formula.stage(at).lines {
            let Content::Stage(c, s) = line.content else { continue };
            let part = formula.stage((c, s)).share(line.mass.value);
            *share.entry((c, s)).or_insert(0.0) += own * part;
            if let Some(count) = open.get_mut(&(c, s)) {
                *count -= 1;
                if *count == 0 {
                    ready.push_back((c, s));
                }
            }
        }
    }
    share.into_iter().collect()
}

/// How many lines use each stage that a product is made by way of.
fn users(formula: &Formula, product: StageAt) -> BTreeMap<StageAt, usize> {
    let mut users: BTreeMap<StageAt, usize> = BTreeMap::new();
    let mut seen = vec![product];
    let mut next = 0;
    while let Some(at) = seen.get(next).copied() {
        next += 1;
        for used in formula.stage(at).uses() {
            let count = users.entry(used).or_insert(0);
            *count += 1;
            if *count == 1 {
                seen.push(used);
            }
        }
    }
    users
}

/// What a formula's first component is made of, per gram: how other formulas use it.
#[must_use]
pub fn blend(formula: &Formula) -> Option<Blend> {
    let last = formula.components.first()?.stages.last()?;
    let made = last.made();
    if made <= Mass::ZERO {
        return None;
    }
    let mut ingredients: BTreeMap<(String, bool), (Arc<Ingredient>, f64)> = BTreeMap::new();
    let mut add = |ingredient: &Arc<Ingredient>, flour: bool, grams: f64| {
        ingredients.entry((ingredient.name.clone(), flour)).or_insert_with(|| (Arc::clone(ingredient), 0.0)).1 += grams;
    };
    for part in weighed(formula, 0) {
        let grams = part.mass / made;
        match &part.line.content {
            Content::Ingredient(ingredient) => add(ingredient, part.line.is_flour, grams),
            Content::Formula(inner) => inner.ingredients.iter().for_each(|(one, flour, share)| add(one, *flour, share * grams)),
            Content::Stage(..) => {}
        }
    }
    let ingredients = ingredients.into_iter().map(|((_, flour), (ingredient, grams))| (ingredient, flour, grams)).collect();
    let (name, title) = (formula.name.clone(), formula.head.title.clone());
    Some(Blend { name, title, made, ingredients, formula: Arc::new(formula.clone()) })
}
