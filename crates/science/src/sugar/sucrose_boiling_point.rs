//! Where a pure sucrose syrup boils, up to hard candy.

use crate::heat;
use crate::keeping::water_activity::WATER_MOLAR_MASS;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Pressure, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::sucrose_boiling_point",
    source: "starzak-peacock-1997",
    place: "water activity coefficient of aqueous sucrose",
    standing: Standing::Published,
    valid: &[Valid { symbol: "w", unit: "%", from: 0.0, to: 95.0 }, Valid { symbol: "P", unit: "kPa", from: 50.0, to: 110.0 }],
};

const SUCROSE_MOLAR_MASS: f64 = 342.3;
const GAS_CONSTANT: f64 = 8.314_46;
const Q: f64 = -17_638.0;
const A: f64 = -1.0038;
const B: f64 = -0.246_53;

/// Returns the water activity of pure sucrose in water at a temperature.
///
/// ```text
/// a_w = x_w · γ      ln γ = Q/(R·T) · x² · (1 + a·x + b·x²)
/// ```
///
/// | symbol | meaning                | value    | unit      |
/// |--------|------------------------|----------|-----------|
/// | `x_w`  | moles of water of all  |          | mol/mol   |
/// | `x`    | moles of sucrose of all |         | mol/mol   |
/// | `Q`    | fitted                 | −17638   | J/mol     |
/// | `a`    | fitted                 | −1.0038  | –         |
/// | `b`    | fitted                 | −0.24653 | –         |
/// | `R`    | gas constant           | 8.31446  | J/(mol K) |
///
/// Fitted by its authors to a century of vapour pressures and boiling points; valid to 95 %.
/// Starzak & Peacock (1997).
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// use science::sugar::sucrose_boiling_point::water_activity;
/// let activity = water_activity(Fraction::percent(60.0), Temperature::celsius(25.0));
/// assert_eq!(format!("{:.2}", activity.as_ratio()), "0.89");
/// ```
#[must_use]
pub fn water_activity(sucrose: Fraction, at: Temperature) -> Fraction {
    let water = sucrose.left().as_ratio() / WATER_MOLAR_MASS;
    let sugar = sucrose.as_ratio() / SUCROSE_MOLAR_MASS;
    let x = sugar / (sugar + water);
    let log = Q / (GAS_CONSTANT * at.as_kelvins()) * x * x * (1.0 + A * x + B * x * x);
    Fraction::ratio((1.0 - x) * libm::exp(log))
}

/// Returns the temperature at which a pure sucrose syrup boils, solved to 1e-9 K in at most 40 steps.
///
/// ```
/// # use quantity::{Fraction, Pressure};
/// use science::sugar::sucrose_boiling_point::boiling_point;
/// let fondant = boiling_point(Fraction::percent(85.0), Pressure::pascals(101_325.0));
/// assert_eq!(format!("{:.0} °C", fondant.as_celsius()), "114 °C");
/// ```
#[must_use]
pub fn boiling_point(sucrose: Fraction, air: Pressure) -> Temperature {
    let mut boils = heat::boiling_point(air);
    for _ in 0..40 {
        let next = heat::boiling_point(air / water_activity(sucrose, boils).as_ratio());
        let moved = (next - boils).as_kelvins().abs();
        boils = next;
        if moved <= 1e-9 {
            break;
        }
    }
    boils
}
