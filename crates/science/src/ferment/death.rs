//! How fast yeast dies when it is too hot.

use crate::{Equation, Standing, Valid};
use quantity::{Rate, Temperature, TemperatureDifference, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::death",
    source: "bigelow-1921",
    place: "log-linear death; growing baker's yeast, decimal reduction in 0.3 min at 60 °C and 5 K, from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 45.0, to: 65.0 }],
};

/// The constants of one organism.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatDeath {
    /// The time that kills nine in ten at 60 °C.
    pub at_60: TimeSpan,
    /// The warming that makes it ten times faster.
    pub step: TemperatureDifference,
    /// Below it no death is counted.
    pub from: Temperature,
}

/// Returns the share of the living that die in an hour.
///
/// ```text
/// k = ln 10 / (D_60·10^((60 − T)/z))   for T > 45 °C, else 0
/// ```
///
/// | symbol | meaning                          | value | unit |
/// |--------|----------------------------------|-------|------|
/// | `k`    | death                            |       | 1/h  |
/// | `T`    | temperature at the yeast         |       | °C   |
/// | `D_60` | time that kills nine in ten      | 0.3   | min  |
/// | `z`    | warming for a tenfold rate       | 5     | K    |
///
/// Valid for 45 °C ≤ T ≤ 65 °C. The trade's warning: no liquid above 46 °C on yeast. Spores stand
/// far more. From memory.
///
/// ```
/// # use quantity::Temperature;
/// # use science::ferment::{Organisms, Strain, death};
/// let heat = Organisms::of(Strain::Bakers).heat;
/// let nine_in_ten = std::f64::consts::LN_10 / death(Temperature::celsius(55.0), &heat).as_per_hour() * 60.0;
/// assert_eq!(format!("{nine_in_ten:.1} min"), "3.0 min");
/// ```
#[must_use]
pub fn death(yeast: Temperature, heat: &HeatDeath) -> Rate {
    if yeast.as_celsius() <= heat.from.as_celsius() {
        return Rate::ZERO;
    }
    let slower = libm::exp10((60.0 - yeast.as_celsius()) / heat.step.as_kelvins());
    Rate::per_hour(std::f64::consts::LN_10 / (heat.at_60.as_hours() * slower))
}
