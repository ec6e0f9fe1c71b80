//! What must be at hand: every ingredient once a component, with household measures where sensible.

use crate::tongue::Tongue;
use crate::words::Units;
use formula::arithmetic::weighed;
use formula::ingredient::eggs;
use formula::ingredient::plain_name;
use formula::read::EggSize;
use formula::read::Group;
use formula::resolve::formula::Content;
use formula::{Component, Formula, Ingredient};
use quantity::{Count, Mass};
use std::sync::Arc;

/// An ingredient of a component, all stages together.
#[derive(Clone, Debug)]
pub struct Need {
    /// What readers see.
    pub title: String,
    /// How much.
    pub mass: Mass,
    /// The household measure, where one comes near: "2½ cups", "3 eggs, size M".
    pub household: Option<String>,
    /// How it should be.
    pub note: Option<String>,
    /// The other formula of the book that makes it, if one does.
    pub formula: Option<String>,
    /// How many pieces, where the author counts them.
    pub pieces: Option<Count>,
    /// Codes of the allergens in it.
    pub allergens: Vec<String>,
    /// What it is, where it is a single ingredient.
    pub ingredient: Option<Arc<Ingredient>>,
    /// The size class meant where it is egg.
    pub egg: EggSize,
}

impl Need {
    /// "350 g strong white flour (2½ cups), sifted", as structured data says it and the page shows it.
    #[must_use]
    pub fn in_words(&self, tongue: Tongue) -> String {
        let household = self.household.as_ref().map(|measure| format!(" ({measure})")).unwrap_or_default();
        let note = self.note.as_ref().map(|note| format!(", {note}")).unwrap_or_default();
        format!("{} {}{household}{note}", tongue.print.mass(self.mass), self.title)
    }
}

/// What a component needs, in the order in which it is first used.
#[must_use]
pub fn needs(formula: &Formula, component: usize, units: Units, egg: EggSize) -> Vec<Need> {
    let mut needs: Vec<(String, Need)> = Vec::new();
    for part in weighed(formula, component).iter().filter(|part| part.stage.0 == component) {
        let (key, ingredient) = match &part.line.content {
            // A line with a name of its own, such as the butter for the tin, stands by itself.
            Content::Ingredient(ingredient) => (key_of(&part.line.name, ingredient), Some(Arc::clone(ingredient))),
            Content::Formula(blend) => (format!("formula {}", blend.name), None),
            Content::Stage(..) => continue,
        };
        // The whole line is weighed out, also where only a part of its stage goes into the product.
        let mass = part.line.mass.value;
        match needs.iter_mut().find(|(other, _)| *other == key) {
            Some((_, need)) => {
                need.mass += mass;
                // Pieces here and gram there: only the gram add up.
                need.pieces = need.pieces.zip(part.line.pieces).map(|(a, b)| a + b);
            }
            None => {
                let title = part.line.title.clone();
                let allergens = ingredient.as_ref().map(|one| one.allergens.clone()).unwrap_or_default();
                let note = part.line.note.clone();
                let formula = match &part.line.content {
                    Content::Formula(blend) => Some(blend.name.clone()),
                    _ => None,
                };
                let (pieces, egg) = (part.line.pieces, part.line.egg_size(egg));
                let need = Need { title, mass, household: None, note, formula, pieces, allergens, ingredient, egg };
                needs.push((key, need));
            }
        }
    }
    let tongue = units.tongue;
    let finish = |(_, mut need): (String, Need)| {
        let counted = need.pieces.map(|pieces| {
            format!(
                "{} {}",
                tongue.print.count(pieces),
                if pieces <= Count::pieces(1.0) { tongue.piece() } else { tongue.pieces() }
            )
        });
        let measured = |one: &Arc<Ingredient>| {
            household(one, need.mass, units, need.egg).filter(|_| counted.is_none() || one.group == Group::Egg)
        };
        need.household = need.ingredient.as_ref().and_then(measured).or(counted);
        need
    };
    needs.into_iter().map(finish).collect()
}

fn key_of(line: &str, ingredient: &Ingredient) -> String {
    let is_own_name = line == ingredient.name || ingredient.also.iter().any(|also| plain_name(also) == plain_name(line));
    if is_own_name { ingredient.name.clone() } else { format!("{} as {line}", ingredient.name) }
}

/// A household measure of a mass, where one is sensible.
#[must_use]
pub fn household(ingredient: &Ingredient, mass: Mass, units: Units, egg: EggSize) -> Option<String> {
    if let Some(one) = eggs::one(ingredient, egg) {
        let count = (mass / one * 2.0).round() / 2.0;
        let near = (count * one.as_grams() - mass.as_grams()).abs() < 0.1 * mass.as_grams();
        return (count > 0.0 && near).then(|| eggs_in_words(ingredient, count, egg, units.tongue));
    }
    let (density, _) = ingredient.density.as_ref()?;
    if ingredient.is_water() && mass < Mass::grams(15.0) {
        return None;
    }
    // Beyond a dozen cups nobody measures by the cup.
    let volume = mass / *density;
    if volume > units.household().cup() * 12.0 {
        return None;
    }
    units.tongue.print.spoons(volume, units.household()).map(|(measure, _)| measure)
}

/// "2 eggs, size M", "1 yolk, size M".
fn eggs_in_words(ingredient: &Ingredient, count: f64, size: EggSize, tongue: Tongue) -> String {
    let pieces = Count::pieces(count);
    let egg = tongue.egg(ingredient.piece_of_egg(), pieces);
    tongue.eggs_of_size(format!("{} {egg}", tongue.print.count(pieces)), size.word())
}

/// The title under which a component's part of the list stands; none where there is only one component.
#[must_use]
pub fn heading<'c>(formula: &Formula, component: &'c Component) -> Option<&'c str> {
    (formula.components.len() > 1).then_some(component.title.as_str())
}
