//! How much carbon dioxide water holds at the pressure of the air.

use crate::numeric::exponential::exp;
use crate::{Equation, Standing, Valid};
use quantity::{Amount, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::dissolved_gas",
    source: "sander-2015",
    place: "Henry's law constants, carbon dioxide: 3.4e-2 mol/(kg bar) at 25 °C, temperature term 2400 K",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.0, to: 37.0 }],
};

/// Returns the carbon dioxide that a kilogram of water holds under one atmosphere of it.
///
/// ```text
/// k_H = 0.0340·exp(2400·(1/T − 1/298.15))
/// ```
///
/// | symbol | meaning           | unit         |
/// |--------|-------------------|--------------|
/// | `k_H`  | dissolved         | mol/(kg atm) |
/// | `T`    | temperature       | K            |
///
/// Valid for 0 °C ≤ T ≤ 37 °C within 3 %; 6 % too little at 45 °C. Sander (2015), from memory.
///
/// ```
/// # use quantity::Temperature;
/// let held = science::ferment::dissolved_gas(Temperature::celsius(25.0));
/// assert_eq!(held.as_moles(), 0.034);
/// ```
#[must_use]
pub fn dissolved_gas(water: Temperature) -> Amount {
    Amount::moles(0.0340 * exp(2400.0 * (1.0 / water.as_kelvins() - 1.0 / 298.15)))
}
