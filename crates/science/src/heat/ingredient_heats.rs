//! Specific heats of ingredients for the balance of mixing.

use crate::entry::{self, Origin};
use quantity::SpecificHeat;
use std::sync::LazyLock;

/// The entries of `data/heat_ingredients.toml`, as text.
pub const DATA: &str = include_str!("../../data/heat_ingredients.toml");

/// The specific heat of an ingredient.
#[derive(Clone, Debug, PartialEq)]
pub struct IngredientHeat {
    /// The ingredient.
    pub name: String,
    /// Its specific heat near room temperature.
    pub heat: SpecificHeat,
    /// Where the figure comes from.
    pub origin: Origin,
}

static HEATS: LazyLock<Vec<IngredientHeat>> = LazyLock::new(|| {
    entry::read(DATA, "ingredient", |row| {
        let heat = row.number("kilojoules_per_kilogram_kelvin").map(SpecificHeat::kilojoules_per_kilogram_kelvin)?;
        Some(IngredientHeat { name: row.word("name")?, heat, origin: row.origin()? })
    })
});

/// The ingredients listed; whatever is missing is computed from its composition by `mixture_heat_capacity`.
#[must_use]
pub fn all() -> &'static [IngredientHeat] {
    &HEATS
}

/// The specific heat of the ingredient of that name.
///
/// ```
/// let flour = science::heat::ingredient_heats::named("flour");
/// assert_eq!(flour.map(|flour| flour.heat.as_joules_per_kilogram_kelvin()), Some(1760.0));
/// ```
#[must_use]
pub fn named(name: &str) -> Option<&'static IngredientHeat> {
    HEATS.iter().find(|heat| heat.name == name)
}
