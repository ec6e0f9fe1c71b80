//! What computes the figures that a forecast gives as they are: in words, and by which equation or custom.

use formula::Known;

/// What computes a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct By {
    /// In words.
    pub words: &'static str,
    /// The equation's name, or the source where it is none.
    pub source: &'static str,
}

const fn by(words: &'static str, source: &'static str) -> By {
    By { words, source }
}

impl By {
    /// A figure that this computes.
    pub fn known<T>(self, value: T) -> Known<T> {
        Known::computed(value, self.words, self.source)
    }
}

/// Masses and pieces.
pub const YIELD: By = by("the formula's own weights, pieces and losses", "baker's arithmetic");
/// Sugar in a syrup.
pub const BRIX: By = by("the sugars and the water of what goes in", "the table of ingredients, each row with its source");
/// The boiling point of a syrup.
pub const BOILS: By = by("the boiling point of a sugar solution", science::sugar::boiling_point::EQUATION.name);
/// Water to boil off or to add, and how long that takes.
pub const BOIL_OFF: By =
    by("the water between two strengths, and the heat that drives it off", science::sugar::boil_off::EQUATION.name);
/// Water until a syrup pours as asked.
pub const POUR: By = by("the viscosity of a clear sugar syrup", science::sugar::viscosity::EQUATION.name);
/// How warm a liquid has to be.
pub const LIQUID: By = by("the balance of heat, solved for the liquid", science::heat::liquid_temperature::EQUATION.name);
/// The trade's rule for the water.
pub const RULE: By = by("the trade's rule of factors", science::heat::factor_rule::EQUATION.name);
/// A dose for a time.
pub const DOSE: By = by("the dose that the course of the ferment asks for", "ferment::fermentation");
/// Contents of food.
pub const CONTENTS: By =
    by("the contents of the ingredients, water that leaves taken off", "the table of ingredients, each row with its source");
/// What things cost.
pub const PRICES: By = by("the packs that are bought, hands and energy at their prices", "the book's prices.toml");
/// How long hands are needed.
pub const HANDS: By = by("the stated times of what is done by hand", "the formula's steps");
/// Energy that a heat draws.
pub const ENERGY: By = by("the power of what heats, and how long", "common practice, no source");
/// How a syrup pours, in everyday words.
pub const LIKE: By = by("everyday liquids by their viscosity", science::sugar::pour::EQUATION.name);
/// How warm a place is in which something stands.
pub const PLACE: By = by("what this kitchen has where it stands", "the kitchen's file, or what is assumed of it");
/// Whether a food may stand without time and temperature control.
pub const FOOD_CODE: By = by("the table of water activity and pH", science::keeping::food_code::EQUATION.name);
/// Whether *Listeria* can grow in ready-to-eat food.
pub const LISTERIA: By = by("the limits for ready-to-eat food", science::keeping::listeria::EQUATION.name);
/// The air's pressure at a height.
pub const AIR: By = by("the pressure of the air at that height", science::heat::air_pressure::EQUATION.name);
/// What water boils at.
pub const WATER_BOILS: By = by("what water boils at under that pressure", science::heat::boiling_point::EQUATION.name);

#[cfg(test)]
mod tests {
    use super::*;

    /// What looks like an equation's name is one.
    #[test]
    fn equations_are_found_by_their_names() {
        for by in [
            YIELD,
            BRIX,
            BOILS,
            BOIL_OFF,
            POUR,
            LIQUID,
            RULE,
            DOSE,
            CONTENTS,
            PRICES,
            HANDS,
            ENERGY,
            LIKE,
            PLACE,
            FOOD_CODE,
            LISTERIA,
            AIR,
            WATER_BOILS,
        ] {
            assert_eq!(by.source.contains("::"), crate::grounds::grounds(by.source).is_some(), "{by:?}");
        }
    }
}
