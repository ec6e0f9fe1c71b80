//! Where a syrup of any sugars boils, at any air pressure.

use crate::heat;
use crate::keeping::water_activity::norrish::water_activity;
use crate::keeping::water_activity::solute::Dissolved;
use crate::{Equation, Standing, Valid};
use quantity::{Mass, Pressure, Temperature, TemperatureDifference};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::boiling_point",
    source: "norrish-1966",
    place: "water activity with the saturation pressure of water",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "solutes in the solution", unit: "%", from: 0.0, to: 80.0 },
        Valid { symbol: "P", unit: "kPa", from: 50.0, to: 110.0 },
    ],
};

/// Returns the temperature at which a syrup boils.
///
/// ```text
/// a_w · p_sat(T) = P
/// ```
///
/// | symbol  | meaning                              | unit |
/// |---------|--------------------------------------|------|
/// | `a_w`   | water activity of the syrup, Norrish | –    |
/// | `p_sat` | saturation pressure of water         | Pa   |
/// | `P`     | air pressure                         | Pa   |
///
/// Valid to about 80 % of sugars. Published elevations differ by 1 K at 70 % and 2.5 K at 80 % of sucrose
/// (5.0 to 6.5 and 9.5 to 12.0 K), this lies between them. Above, see [`super::sucrose_boiling_point`] and
/// [`super::stage`]. Without water there is no boiling point: the answer means nothing.
///
/// ```
/// # use quantity::{Mass, Pressure};
/// use science::keeping::water_activity::solute::{Dissolved, named};
/// let sugar = [Dissolved { solute: named("sucrose").expect("known"), mass: Mass::grams(60.0) }];
/// let boils = science::sugar::boiling_point::boiling_point(Mass::grams(40.0), &sugar, Pressure::pascals(101_325.0));
/// assert_eq!(format!("{:.1} °C", boils.as_celsius()), "103.1 °C");
/// ```
#[must_use]
pub fn boiling_point(water: Mass, sugars: &[Dissolved], air: Pressure) -> Temperature {
    heat::boiling_point(air / water_activity(water, sugars).as_ratio())
}

/// Returns how far above water's own boiling point a syrup boils.
#[must_use]
pub fn elevation(water: Mass, sugars: &[Dissolved], air: Pressure) -> TemperatureDifference {
    boiling_point(water, sugars, air) - heat::boiling_point(air)
}
