//! How fast yeast makes gas at a temperature.

use crate::numeric::exponential::exp;
use crate::{Equation, Standing, Valid};
use quantity::Temperature;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::gas_rate",
    source: "ratkowsky-1983",
    place: "the square-root model over the whole range; constants fitted",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "T", unit: "°C", from: 4.0, to: 40.0 }],
};

/// The constants of one yeast.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SquareRootLaw {
    /// Below it no gas is made.
    pub lowest: Temperature,
    /// Above it no gas is made.
    pub highest: Temperature,
    /// How sharply the rate falls towards the highest, per kelvin.
    pub bend: f64,
}

/// Returns the gas rate at a temperature as a share of that at 30 °C.
///
/// ```text
/// r(T) = [(T − T_n)·(1 − exp(c·(T − T_x)))]²   for T_n < T < T_x, else 0
/// g(T) = r(T) / r(30 °C)
/// ```
///
/// | symbol | meaning            | baker's yeast | sourdough yeast | unit |
/// |--------|--------------------|---------------|-----------------|------|
/// | `g`    | relative gas rate  |               |                 | –    |
/// | `T`    | dough temperature  |               |                 | °C   |
/// | `T_n`  | lowest, fitted     | −5            | −5              | °C   |
/// | `T_x`  | highest, fitted    | 50            | 42              | °C   |
/// | `c`    | bend, fitted       | 0.20          | 0.30            | 1/K  |
///
/// Valid for 4 °C ≤ T ≤ 40 °C (sourdough 10 to 32 °C); outside it goes on to zero at both ends.
/// Ratkowsky et al. (1983) for the form; the constants are fitted to doubling every 9.4 K and to
/// 4 °C being about ten times slower than 23 °C.
///
/// ```
/// # use quantity::Temperature;
/// # use science::ferment::{gas_rate, Organisms, Strain};
/// let law = Organisms::of(Strain::Bakers).gas_law;
/// let ratio = gas_rate(Temperature::celsius(26.7), &law) / gas_rate(Temperature::celsius(17.2), &law);
/// assert_eq!(format!("{ratio:.2}"), "2.01");
/// ```
#[must_use]
pub fn gas_rate(dough: Temperature, law: &SquareRootLaw) -> f64 {
    square_root_law(dough, law) / square_root_law(Temperature::celsius(30.0), law)
}

/// The law itself, not yet divided by its value at 30 °C.
pub(super) fn square_root_law(dough: Temperature, law: &SquareRootLaw) -> f64 {
    let (t, lowest, highest) = (dough.as_celsius(), law.lowest.as_celsius(), law.highest.as_celsius());
    if t <= lowest || t >= highest {
        return 0.0;
    }
    let root = (t - lowest) * (1.0 - exp(law.bend * (t - highest)));
    root * root
}
