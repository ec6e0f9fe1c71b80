//! How fast the organisms of a sourdough grow at a temperature.

use crate::numeric::exponential::exp;
use crate::{Equation, Standing, Valid};
use quantity::{Rate, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::culture_growth",
    source: "ganzle-1998",
    place: "growth rate against temperature, Lactobacillus sanfranciscensis and Candida milleri",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 10.0, to: 37.0 }],
};

/// The constants of one organism.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CultureOrganism {
    /// The scale.
    pub a: Rate,
    /// The power of the distance from the highest temperature.
    pub b: f64,
    /// The decay with that distance, per kelvin.
    pub c: f64,
    /// Above it nothing grows.
    pub highest: Temperature,
}

/// Returns the growth rate at a temperature.
///
/// ```text
/// x = T_x − T
/// µ = a·x^b·exp(−c·x)   for x > 0, else 0
/// ```
///
/// | symbol | meaning           | bacteria | yeast  | unit |
/// |--------|-------------------|----------|--------|------|
/// | `µ`    | growth rate       |          |        | 1/h  |
/// | `T`    | dough temperature |          |        | °C   |
/// | `a`    | scale             | 0.1267   | 0.0124 | 1/h  |
/// | `b`    | power             | 1.5404   | 2.981  | –    |
/// | `c`    | decay             | 0.1931   | 0.3355 | 1/K  |
/// | `T_x`  | highest           | 41       | 36     | °C   |
///
/// Valid for 10 °C ≤ T ≤ 37 °C. Below about 4 °C (bacteria) and 6 to 8 °C (yeast) neither was seen
/// to grow, while the equation still gives a little. Gänzle, Ehmann & Hammes (1998).
///
/// ```
/// # use quantity::Temperature;
/// # use science::ferment::{Organisms, Strain, culture_growth};
/// let bacteria = Organisms::of(Strain::Sourdough).bacteria;
/// let rate = culture_growth(Temperature::celsius(33.0), &bacteria);
/// assert_eq!(format!("{:.3} 1/h", rate.as_per_hour()), "0.665 1/h");
/// ```
#[must_use]
pub fn culture_growth(dough: Temperature, organism: &CultureOrganism) -> Rate {
    let x = organism.highest.as_celsius() - dough.as_celsius();
    if x <= 0.0 {
        return Rate::ZERO;
    }
    organism.a * exp(organism.b * libm::log(x) - organism.c * x)
}
