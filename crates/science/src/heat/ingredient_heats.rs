//! Specific heats of ingredients for the balance of mixing.

use crate::Standing;
use quantity::SpecificHeat;

/// The specific heat of an ingredient.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IngredientHeat {
    /// The ingredient.
    pub name: &'static str,
    /// Its specific heat near room temperature.
    pub heat: SpecificHeat,
    /// A key of `sources/heat.toml`.
    pub source: &'static str,
    /// The place in the source.
    pub place: &'static str,
    /// How well it is founded.
    pub standing: Standing,
}

const fn heat(name: &'static str, kilojoules: f64, (source, standing): (&'static str, Standing)) -> IngredientHeat {
    IngredientHeat {
        name,
        heat: SpecificHeat::kilojoules_per_kilogram_kelvin(kilojoules),
        source,
        place: "specific heat near 20 °C",
        standing,
    }
}

/// The ingredients; whatever is missing is computed from its composition.
pub const INGREDIENT_HEATS: &[IngredientHeat] = &[
    heat("flour", 1.76, ("cengel-boles-2006", Standing::Published)),
    heat("water", 4.18, ("cengel-boles-2006", Standing::Published)),
    heat("milk", 3.94, ("milk-calorimetry", Standing::Published)),
    heat("egg", 3.3, ("ashrae-2006", Standing::FromMemory)),
    heat("butter", 2.3, ("ashrae-2006", Standing::FromMemory)),
    heat("sugar", 1.25, ("ashrae-2006", Standing::FromMemory)),
    heat("oil", 2.0, ("ashrae-2006", Standing::FromMemory)),
    heat("equal-weights preferment", 2.97, ("cengel-boles-2006", Standing::Fitted)),
];
