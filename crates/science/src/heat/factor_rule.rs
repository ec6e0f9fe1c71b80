//! The bakers' rule for the water temperature, beside the balance of heat.

use crate::{Equation, Standing, Valid};
use quantity::{Temperature, TemperatureDifference};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::factor_rule",
    source: "trade",
    place: "three- and four-factor rule of bread making",
    standing: Standing::CommonPractice,
    valid: &[Valid { symbol: "T", unit: "°C", from: 18.0, to: 32.0 }],
};

/// Returns the water temperature by the rule: as many times the desired temperature as there are factors
/// with the friction among them, less the factors.
///
/// ```text
/// three factors: T_w = 3·T − T_room − T_flour − F
/// four factors:  T_w = 4·T − T_room − T_flour − T_preferment − F
/// ```
///
/// | symbol | meaning                                  | unit |
/// |--------|------------------------------------------|------|
/// | `T_w`  | temperature of the water                 | °C   |
/// | `T`    | desired dough temperature                | °C   |
/// | `F`    | friction factor of one mixer and one dough | K  |
///
/// A rule of the trade without a citable source: masses and specific heats are not in it, so the
/// friction factor also stands for the heat of hydration, 2.5 to 3.5 K of dough, and for the bowl; it
/// is not the rise of the dough's temperature by friction. The balance of heat asks for warmer water
/// with little water and for cooler with much. Valid for 18 to 32 °C; the formula answers everywhere.
///
/// ```
/// # use quantity::{Temperature, TemperatureDifference};
/// let parts = [Temperature::fahrenheit(72.0), Temperature::fahrenheit(70.0)];
/// let friction = TemperatureDifference::fahrenheit_degrees(24.0);
/// let water = science::heat::factor_rule(Temperature::fahrenheit(76.0), &parts, friction);
/// assert_eq!(format!("{:.0} °F", water.as_fahrenheit()), "62 °F");
/// ```
#[must_use]
pub fn factor_rule(desired: Temperature, parts: &[Temperature], friction: TemperatureDifference) -> Temperature {
    // Written with differences, which makes it the same rule in °C and °F.
    parts.iter().fold(desired, |water, part| water + (desired - *part)) - friction
}

/// Returns the friction factor with which the rule agrees with a water temperature, such as one found by the
/// balance of heat or in a batch that came out right: what the rule's one figure has to stand for.
#[must_use]
pub fn agreeing_friction(desired: Temperature, parts: &[Temperature], water: Temperature) -> TemperatureDifference {
    factor_rule(desired, parts, TemperatureDifference::default()) - water
}
