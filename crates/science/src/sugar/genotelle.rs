//! Viscosity of sugar syrup by Génotelle's equation, the sugar trade's own.

use super::where_reached;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature, Viscosity};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::genotelle",
    source: "genotelle-1978",
    place: "viscosity of pure sucrose, from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "B", unit: "%", from: 10.0, to: 75.0 }, Valid { symbol: "T", unit: "°C", from: 15.0, to: 95.0 }],
};

/// Returns the viscosity of a sucrose solution.
///
/// ```text
/// log₁₀ η = 22.46·N − 0.114 + f·(1.1 + 43.1·N^1.25)
/// N = B/(1900 − 18·B)      f = (30 − T)/(91 + T)
/// ```
///
/// | symbol | meaning         | unit  |
/// |--------|-----------------|-------|
/// | `η`    | viscosity       | mPa s |
/// | `B`    | sucrose by mass | %     |
/// | `T`    | temperature     | °C    |
///
/// Within 3 % at 20 °C, within 8 % elsewhere between 15 and 95 °C; see [`super::viscosity`] for a closer
/// fit. Génotelle (1978), from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let syrup = science::sugar::genotelle::viscosity(Fraction::percent(66.0), Temperature::celsius(20.0));
/// assert_eq!(format!("{:.1} mPa s", syrup.as_millipascal_seconds()), "184.4 mPa s");
/// ```
#[must_use]
pub fn viscosity(sucrose: Fraction, at: Temperature) -> Viscosity {
    let (b, t) = (sucrose.as_percent(), at.as_celsius());
    let n = b / (1900.0 - 18.0 * b);
    let f = (30.0 - t) / (91.0 + t);
    let log = 22.46 * n - 0.114 + f * (1.1 + 43.1 * libm::pow(n.max(0.0), 1.25));
    Viscosity::millipascal_seconds(libm::pow(10.0, log))
}

/// Returns the share of sucrose that gives a viscosity at a temperature, between 0 and 90 %.
///
/// ```
/// # use quantity::{Temperature, Viscosity};
/// let share = science::sugar::genotelle::sucrose(Viscosity::pascal_seconds(1.5), Temperature::celsius(40.0));
/// assert_eq!(format!("{:.1} %", share.as_percent()), "79.1 %");
/// ```
#[must_use]
pub fn sucrose(wanted: Viscosity, at: Temperature) -> Fraction {
    Fraction::ratio(where_reached(wanted.as_pascal_seconds(), (0.0, 0.9), |w| {
        viscosity(Fraction::ratio(w), at).as_pascal_seconds()
    }))
}
