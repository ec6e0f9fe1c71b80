//! How a dough warms itself while it ferments.

use crate::{Equation, Standing, Valid};
use quantity::{Mass, Rate};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::own_heat",
    source: "stoichiometry",
    place: "heat of hexose to ethanol and carbon dioxide gas from formation enthalpies, rounded",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "W", unit: "kg/kg flour", from: 0.4, to: 1.5 }],
};

/// The constants of the warming.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OwnHeat {
    /// Heat of fermenting a mole of hexose, in kJ.
    pub per_mole: f64,
    /// Specific heat of flour, in kJ/(kg K).
    pub flour: f64,
    /// Specific heat of water, in kJ/(kg K).
    pub water: f64,
    /// Carbon dioxide from a mole of hexose.
    pub gas_yield: f64,
}

/// Returns by how many kelvin an hour a dough warms itself at a rate of gas a kg flour.
///
/// ```text
/// dT/dt = H·(dC/dt)/(y·(c_f + c_w·W))
/// ```
///
/// | symbol  | meaning                                   | value | unit       |
/// |---------|-------------------------------------------|-------|------------|
/// | `dC/dt` | carbon dioxide made, mol a kg flour       |       | mol/(kg h) |
/// | `H`     | heat of fermenting hexose                 | 100   | kJ/mol     |
/// | `y`     | carbon dioxide from hexose                | 1.9   | mol/mol    |
/// | `c_f`   | specific heat of flour                    | 1.76  | kJ/(kg K)  |
/// | `c_w`   | specific heat of water                    | 4.18  | kJ/(kg K)  |
/// | `W`     | water added, a kg flour                   |       | kg/kg      |
///
/// Valid for 40 to 150 % water; losses to the room come on top. From formation enthalpies.
///
/// ```
/// # use quantity::{Mass, Rate};
/// # use science::ferment::{Stage, own_heat};
/// let warming = own_heat(Rate::per_hour(0.1), Mass::kilograms(0.6), &Stage::default().own_heat);
/// assert_eq!(format!("{:.2} K/h", warming.as_per_hour()), "1.23 K/h");
/// ```
#[must_use]
pub fn own_heat(gas: Rate, water_added: Mass, heat: &OwnHeat) -> Rate {
    gas * (heat.per_mole / (heat.gas_yield * (heat.flour + heat.water * water_added.as_kilograms())))
}
