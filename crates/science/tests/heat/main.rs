//! Heat held to laws, limits and traps: what no table of reference points can show.

mod convergence;
mod griddle;
mod panics;
mod traps;
mod verdicts;

use quantity::*;
use science::heat::Composition;

/// A griddle batter.
fn batter() -> Composition {
    Composition {
        water: Fraction::percent(52.0),
        protein: Fraction::percent(7.0),
        fat: Fraction::percent(6.0),
        carbohydrate: Fraction::percent(32.5),
        fibre: Fraction::percent(1.0),
        ash: Fraction::percent(1.5),
        ice: Fraction::ZERO,
    }
}

/// The second at which a course has had so many minutes of 70 °C with z 7.5 K, infinite if never.
fn lethal_minutes(course: &[(TimeSpan, Temperature)], minutes: f64) -> f64 {
    let rate = |t: Temperature| libm::pow(10.0, (t.as_celsius() - 70.0) / 7.5);
    let mut sum = 0.0;
    for pair in course.windows(2) {
        sum += f64::midpoint(rate(pair[0].1), rate(pair[1].1)) * (pair[1].0 - pair[0].0).as_minutes();
        if sum >= minutes {
            return pair[1].0.as_seconds();
        }
    }
    f64::INFINITY
}
