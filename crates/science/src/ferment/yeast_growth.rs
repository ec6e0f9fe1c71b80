//! How fast baker's yeast grows at a temperature.

use crate::{Equation, Standing, Valid};
use quantity::{Rate, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::yeast_growth",
    source: "rosso-1993",
    place: "cardinal temperature model with inflection; cardinal values of salvado-2011, rate in dough fitted",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "T", unit: "°C", from: 4.0, to: 40.0 }],
};

/// The cardinal temperatures of one yeast.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cardinal {
    /// Below it nothing grows.
    pub lowest: Temperature,
    /// At it growth is fastest.
    pub optimum: Temperature,
    /// Above it nothing grows.
    pub highest: Temperature,
    /// The rate at the optimum.
    pub rate: Rate,
}

/// Returns the growth rate at a temperature.
///
/// ```text
/// µ = µ_opt·(T − T_x)·(T − T_n)² / {(T_o − T_n)·[(T_o − T_n)·(T − T_o) − (T_o − T_x)·(T_o + T_n − 2T)]}
/// for T_n < T < T_x, else 0
/// ```
///
/// | symbol  | meaning                     | value | unit |
/// |---------|-----------------------------|-------|------|
/// | `µ`     | growth rate                 |       | 1/h  |
/// | `T`     | dough temperature           |       | °C   |
/// | `T_n`   | lowest                      | 2.84  | °C   |
/// | `T_o`   | optimum                     | 32.27 | °C   |
/// | `T_x`   | highest                     | 45.39 | °C   |
/// | `µ_opt` | rate at the optimum, fitted | 0.25  | 1/h  |
///
/// Valid for 4 °C ≤ T ≤ 40 °C; zero outside the cardinal temperatures. Rosso, Lobry & Flandrois
/// (1993); Salvadó et al. (2011). The rate in dough is fitted to cell counts at 27 °C.
///
/// ```
/// # use quantity::Temperature;
/// # use science::ferment::{Growth, Organisms, Strain, yeast_growth};
/// # let Growth::Cardinal(yeast) = Organisms::of(Strain::Bakers).growth else { panic!() };
/// let rate = yeast_growth(Temperature::celsius(27.0), &yeast);
/// assert_eq!(format!("{:.2} 1/h", rate.as_per_hour()), "0.23 1/h");
/// ```
#[must_use]
pub fn yeast_growth(dough: Temperature, yeast: &Cardinal) -> Rate {
    let (t, n, o, x) = (dough.as_celsius(), yeast.lowest.as_celsius(), yeast.optimum.as_celsius(), yeast.highest.as_celsius());
    if t <= n || t >= x {
        return Rate::ZERO;
    }
    let shape = (t - x) * (t - n) * (t - n) / ((o - n) * ((o - n) * (t - o) - (o - x) * (o + n - 2.0 * t)));
    yeast.rate * shape
}
