//! The American Food Code's times and temperatures for cooking raw egg.

use crate::{Equation, Standing, Valid};
use quantity::{Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::cooking_rule",
    source: "food-code-2022",
    place: "3-401.11(A)(1)(a) and (A)(2)",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.0, to: 100.0 }, Valid { symbol: "t", unit: "s", from: 0.0, to: 86_400.0 }],
};

/// What raw egg is cooked into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RawEgg {
    /// A shell egg broken and cooked to order for one, eaten at once.
    CookedToOrder,
    /// Pooled, or in a batter, custard or other mixture.
    InAMixture,
}

/// Temperature in °C and seconds; any row that is met is enough.
const TO_ORDER: [(f64, f64); 1] = [(63.0, 15.0)];
const MIXTURE: [(f64, f64); 4] = [(63.0, 180.0), (66.0, 60.0), (68.0, 17.0), (70.0, 0.0)];

/// Returns whether a temperature held for a time meets the rule; there is no interpolation between rows.
///
/// ```text
/// cooked to order: 63 °C 15 s
/// in a mixture:    63 °C 3 min,  66 °C 1 min,  68 °C 17 s (15 s before 2017),  70 °C at once
/// ```
///
/// | symbol | meaning                     | unit |
/// |--------|-----------------------------|------|
/// | `T`    | temperature in every part   | °C   |
/// | `t`    | time it is held             | s    |
///
/// Guidance, not a certificate; the advice to households is 71 °C for every egg dish.
///
/// ```
/// # use quantity::{Temperature, TimeSpan};
/// use science::keeping::cooking_rule::{RawEgg, met};
/// assert!(!met(RawEgg::InAMixture, Temperature::celsius(66.0), TimeSpan::seconds(59.0)));
/// ```
#[must_use]
pub fn met(egg: RawEgg, temperature: Temperature, held: TimeSpan) -> bool {
    let rows: &[(f64, f64)] = match egg {
        RawEgg::CookedToOrder => &TO_ORDER,
        RawEgg::InAMixture => &MIXTURE,
    };
    rows.iter().any(|(celsius, seconds)| temperature.as_celsius() >= *celsius && held.as_seconds() >= *seconds)
}
