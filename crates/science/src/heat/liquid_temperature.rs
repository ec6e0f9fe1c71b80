//! How warm the liquid must be for a desired dough temperature, and how much of it as ice.

use super::mixing_temperature::{FUSION, Mixing, Portion, WATER, together};
use crate::{Equation, Standing, Valid};
use quantity::{Mass, SpecificHeat, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::liquid_temperature",
    source: "cengel-boles-2006",
    place: "ch. 5, the balance of mixing solved for one stream",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.0, to: 45.0 }],
};

/// Returns the temperature of the liquid with which everything comes to a desired temperature.
///
/// ```text
/// T_l = (T·(Σ m·c + C) − Σ m·c·T_i − C·T_r − q·m_f − W) / (m_l·c_l),   sums with the liquid in the first only
/// ```
///
/// | symbol | meaning                                   | unit          |
/// |--------|-------------------------------------------|---------------|
/// | `T_l`  | temperature of the liquid                 | °C            |
/// | `T`    | desired temperature after mixing          | °C            |
/// | `m_l`, `c_l` | mass and specific heat of the liquid | kg, kJ/(kg K) |
///
/// The other symbols as in `mixing_temperature`, whose inverse it is. Valid for 0 to 45 °C of liquid;
/// an answer below what the tap gives asks for ice, see [`ice_in`]; yeast dies above 50 °C.
/// Çengel & Boles (2006), ch. 5.
///
/// ```
/// # use quantity::*;
/// # use science::heat::{liquid_temperature, mixing_temperature::{Mixing, Portion, WATER}};
/// let flour = Portion {
///     mass: Mass::grams(1000.0),
///     heat: SpecificHeat::joules_per_kilogram_kelvin(1760.0),
///     temperature: Temperature::celsius(20.0),
/// };
/// let wetting = Mixing { newly_wetted: flour.mass, ..Mixing::default() };
/// let water = liquid_temperature(&[flour], &wetting, (Mass::grams(650.0), WATER), Temperature::celsius(24.0));
/// assert_eq!(format!("{:.1} °C", water.as_celsius()), "21.0 °C");
/// ```
#[must_use]
pub fn liquid_temperature(
    others: &[Portion],
    mixing: &Mixing,
    (mass, heat): (Mass, SpecificHeat),
    desired: Temperature,
) -> Temperature {
    let own = mass.as_kilograms() * heat.as_joules_per_kilogram_kelvin();
    let (brought, capacity) = together(others);
    let (more, more_capacity) = mixing.heat();
    Temperature::celsius((desired.as_celsius() * (own + capacity + more_capacity) - brought - more) / own)
}

/// Returns how much of the water to replace by ice at 0 °C, so that it cools as water of `needed` would.
#[must_use]
pub fn ice_in(water: Mass, tap: Temperature, needed: Temperature) -> Mass {
    let c = WATER.as_joules_per_kilogram_kelvin();
    let share = c * (tap - needed).as_kelvins() / (c * tap.as_celsius() + FUSION.as_joules_per_kilogram());
    water * share.max(0.0)
}
