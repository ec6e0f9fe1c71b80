//! Heat that butter takes up as it warms, the melting of its fat included.

use super::solid_fat;
use crate::{Equation, Standing, Valid};
use quantity::{SpecificEnergy, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::butter_warming",
    source: "walstra-2006",
    place: "heat of fusion of milk fat and its solid share, from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T₁", unit: "°C", from: 5.0, to: 45.0 }, Valid { symbol: "T₂", unit: "°C", from: 5.0, to: 45.0 }],
};

/// Specific heat of butter that neither melts nor sets, in kJ/(kg K): its composition at 20 °C.
const SENSIBLE: f64 = 2.34;
/// Heat that melts a mass of solid milk fat, in kJ/kg; 70 to 80 are quoted.
const FUSION: f64 = 80.0;
/// The share of fat in butter.
const FAT: f64 = 0.82;

/// Returns the heat that warms a mass of butter from one temperature to another.
///
/// ```text
/// q = c·(T₂ − T₁) + f·L·(s(T₁) − s(T₂))
/// ```
///
/// | symbol | meaning                              | value | unit      |
/// |--------|--------------------------------------|-------|-----------|
/// | `q`    | heat, negative on cooling            |       | kJ/kg     |
/// | `c`    | specific heat without melting        | 2.34  | kJ/(kg K) |
/// | `f`    | share of fat                         | 0.82  | –         |
/// | `L`    | heat of fusion of milk fat           | 80    | kJ/kg     |
/// | `s`    | solid share of the fat, `solid_fat`  |       | –         |
///
/// From the fridge into a dough, melting is almost as much as warming. Butter that cools sets slowly,
/// over hours, so the gain on cooling comes late. Valid for 5 to 45 °C; below, no more fat is solid.
/// Walstra and others (2006), figures from memory.
///
/// ```
/// # use quantity::Temperature;
/// let cold = science::heat::butter_warming(Temperature::celsius(5.0), Temperature::celsius(25.0));
/// assert_eq!(format!("{:.0} kJ/kg", cold.as_kilojoules_per_kilogram()), "82 kJ/kg");
/// ```
#[must_use]
pub fn butter_warming(from: Temperature, to: Temperature) -> SpecificEnergy {
    let melted = (solid_fat(from) - solid_fat(to)).as_ratio();
    SpecificEnergy::kilojoules_per_kilogram(SENSIBLE * (to - from).as_kelvins() + FAT * FUSION * melted)
}
