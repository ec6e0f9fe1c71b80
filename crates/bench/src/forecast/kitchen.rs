//! The kitchen as the forecast sees it: what is stated, and what is taken for granted.

use super::Calibration;
use formula::read::{Group, Kitchen};
use formula::{Ingredient, Known, Origin};
use quantity::Temperature;

/// How warm it is where things stand.
#[derive(Clone, Debug)]
pub struct Surroundings {
    /// The kitchen's title.
    pub title: String,
    /// The room.
    pub room: Known<Temperature>,
    /// The fridge.
    pub fridge: Known<Temperature>,
    /// What its trials taught.
    pub calibration: Calibration,
}

const ROOM: Temperature = Temperature::celsius(21.0);
const FRIDGE: Temperature = Temperature::celsius(5.0);

impl Surroundings {
    /// A kitchen, with the usual figures where it states none.
    #[must_use]
    pub fn of(kitchen: &Kitchen) -> Self {
        let stated = |value: Option<Temperature>, usual: Temperature| match value {
            Some(value) => Known { value, band: None, origin: Origin::Measured(kitchen.title.clone()) },
            None => Known::assumed(usual, "common practice, no source"),
        };
        Self {
            title: kitchen.title.clone(),
            room: stated(kitchen.room, ROOM),
            fridge: stated(kitchen.fridge, FRIDGE),
            calibration: Calibration::default(),
        }
    }

    /// The same with what its trials taught.
    #[must_use]
    pub fn taught(self, calibration: Calibration) -> Self {
        Self { calibration, ..self }
    }

    /// How warm an ingredient is that states no temperature: dairy and egg as the fridge, the rest as the room.
    #[must_use]
    pub fn stored(&self, ingredient: &Ingredient) -> Known<Temperature> {
        let is_chilled = matches!(ingredient.group, Group::Dairy | Group::Egg);
        let place = if is_chilled { &self.fridge } else { &self.room };
        Known::assumed(place.value, if is_chilled { "as cold as the fridge" } else { "as warm as the room" })
    }
}
