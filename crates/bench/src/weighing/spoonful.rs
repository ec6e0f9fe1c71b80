//! A small amount by the spoon: the nearest measure, and how far two people's spoons differ.

use formula::Ingredient;
use formula::read::Group;
use quantity::{Fraction, Mass, SpoonSystem, Volume, print};

/// How far spooned powders differ from one person to the next: common practice, no source.
const POWDER_SPREAD: Fraction = Fraction::percent(15.0);
/// How far poured liquids differ: common practice, no source.
const LIQUID_SPREAD: Fraction = Fraction::percent(5.0);

/// A spoon measure.
#[derive(Clone, Debug, PartialEq)]
pub struct Spoonful {
    /// How much room the amount takes.
    pub volume: Volume,
    /// Whose spoons are meant.
    pub system: SpoonSystem,
    /// How far it is from the amount, as a share.
    pub off: Fraction,
    /// How far two people's spoons differ, either way.
    pub spread: Fraction,
}

/// The spoon measure nearest to an amount, if one comes within a tenth.
#[must_use]
pub fn spoonful(ingredient: &Ingredient, amount: Mass, system: SpoonSystem) -> Option<Spoonful> {
    let (density, _) = ingredient.density.as_ref()?;
    let volume = amount / *density;
    let (_, off) = print::spoons(volume, system)?;
    let pours = matches!(ingredient.group, Group::Liquid | Group::Spirit | Group::Syrup | Group::Dairy | Group::Fat | Group::Egg);
    Some(Spoonful { volume, system, off, spread: if pours { LIQUID_SPREAD } else { POWDER_SPREAD } })
}
