//! How fast a dry crumb browns on a hot plate, and how brown it is after a course of temperatures.

use crate::{Equation, Standing, Valid};
use quantity::{Rate, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::browning",
    source: "zanoni-1995-browning",
    place: "first-order rate of the colour difference of dried crumb",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 140.0, to: 250.0 }],
};

/// The gas constant in J/(mol K).
const GAS_CONSTANT: f64 = 8.314;
/// The colour difference that browning tends to.
const DEEPEST: f64 = 52.0;

/// How many times faster a sweet batter with milk browns than dried bread crumb: a guess from memory,
/// to be calibrated for each recipe by eye.
pub const SWEET_BATTER: f64 = 5.0;

/// Returns the rate of browning of dried crumb.
///
/// ```text
/// d(ΔE)/dt = k·(52 − ΔE),   k = 42000·exp(−64151 / (R·T))
/// ```
///
/// | symbol | meaning                                         | value | unit      |
/// |--------|-------------------------------------------------|-------|-----------|
/// | `ΔE`   | colour difference to the raw crumb, CIE 1976    |       | –         |
/// | `k`    | rate                                            |       | 1/s       |
/// | `T`    | temperature of the face                         |       | K         |
/// | `R`    | gas constant                                    | 8.314 | J/(mol K) |
///
/// Without sugar or milk: real batters brown several times faster, so a recipe needs one factor of
/// its own. Valid for 140 to 250 °C; below, an extrapolation. Zanoni, Peri & Bruno (1995).
///
/// ```
/// # use quantity::Temperature;
/// let rate = science::heat::browning(Temperature::celsius(180.0));
/// assert_eq!(format!("{:.2e} 1/s", rate.as_per_second()), "1.69e-3 1/s");
/// ```
#[must_use]
pub fn browning(face: Temperature) -> Rate {
    Rate::per_second(42_000.0 * libm::exp(-64_151.0 / (GAS_CONSTANT * face.as_kelvins())))
}

/// Returns the colour difference after a course of face temperatures, `factor` times as fast as dried crumb.
#[must_use]
pub fn colour_difference(course: &[(TimeSpan, Temperature)], factor: f64) -> f64 {
    let exponent: f64 = course
        .windows(2)
        .map(|pair| {
            let rate = f64::midpoint(browning(pair[0].1).as_per_second(), browning(pair[1].1).as_per_second());
            rate * (pair[1].0 - pair[0].0).as_seconds()
        })
        .sum();
    -DEEPEST * libm::expm1(-exponent * factor)
}

/// Returns how long a face was hotter than a temperature: what the trade goes by (common practice, no source).
#[must_use]
pub fn time_above(course: &[(TimeSpan, Temperature)], limit: Temperature) -> TimeSpan {
    course
        .windows(2)
        .map(|pair| {
            let (a, b) = ((pair[0].1 - limit).as_kelvins(), (pair[1].1 - limit).as_kelvins());
            let share = match (a > 0.0, b > 0.0) {
                (true, true) => 1.0,
                (false, false) => 0.0,
                _ => a.max(b) / (a - b).abs(),
            };
            (pair[1].0 - pair[0].0) * share
        })
        .sum()
}
