//! Specific heat of a food from its composition.

use super::component::Composition;
use super::{WaterConstant, component_heat_capacity};
use crate::{Equation, Standing, Valid};
use quantity::{SpecificHeat, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::mixture_heat_capacity",
    source: "ashrae-2006",
    place: "ch. 9, specific heat of unfrozen food",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: -40.0, to: 150.0 }],
};

/// Returns the specific heat of a food that neither freezes, melts nor dries meanwhile.
///
/// ```text
/// c_p = Σ x_i·c_i
/// ```
///
/// | symbol | meaning                      | unit     |
/// |--------|------------------------------|----------|
/// | `c_p`  | specific heat                | J/(kg K) |
/// | `x_i`  | mass fraction of a component | –        |
/// | `c_i`  | its specific heat            | J/(kg K) |
///
/// The melting of fat and of ice is not in it. Valid for −40 °C ≤ T ≤ 150 °C; outside, the formula
/// still answers. ASHRAE Handbook, Refrigeration (2006), ch. 9.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::heat::{Composition, WaterConstant, mixture_heat_capacity};
/// let half = Composition { water: Fraction::percent(50.0), fat: Fraction::percent(50.0), ..Composition::default() };
/// let heat = mixture_heat_capacity(&half, Temperature::celsius(20.0), WaterConstant::Original);
/// assert_eq!(format!("{:.0}", heat.as_joules_per_kilogram_kelvin()), "3094");
/// ```
#[must_use]
pub fn mixture_heat_capacity(food: &Composition, temperature: Temperature, constant: WaterConstant) -> SpecificHeat {
    food.parts().map(|(part, share)| component_heat_capacity(part, temperature, constant) * share).sum()
}
