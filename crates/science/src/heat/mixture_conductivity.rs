//! Thermal conductivity of a dense food from its composition.

use super::component::{Component, Composition};
use super::{component_conductivity, component_density};
use crate::{Equation, Standing, Valid};
use quantity::{Conductivity, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::mixture_conductivity",
    source: "ashrae-2006",
    place: "ch. 9, thermal conductivity, parallel and perpendicular models",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: -40.0, to: 150.0 }],
};

/// How the components lie to the flow of heat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Arrangement {
    /// Side by side: the upper bound.
    Parallel,
    /// One behind the other: the lower bound.
    Series,
    /// At random, the geometric mean: the usual choice for batters and doughs.
    Geometric,
}

/// Returns the conductivity of a food without pores.
///
/// ```text
/// parallel:  k = Σ v_i·k_i
/// series:    k = 1 / Σ (v_i / k_i)
/// geometric: k = Π k_i^v_i
/// v_i = (x_i/ρ_i) / Σ (x_j/ρ_j)
/// ```
///
/// | symbol | meaning                        | unit    |
/// |--------|--------------------------------|---------|
/// | `k`    | conductivity                   | W/(m K) |
/// | `v_i`  | volume fraction of a component | –       |
/// | `x_i`  | its mass fraction              | –       |
/// | `ρ_i`  | its density                    | kg/m³   |
/// | `k_i`  | its conductivity               | W/(m K) |
///
/// The truth lies between series and parallel. Valid for −40 °C ≤ T ≤ 150 °C; outside, the formula
/// still answers. ASHRAE Handbook, Refrigeration (2006), ch. 9; the geometric mean is customary.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::heat::{Arrangement, Composition, mixture_conductivity};
/// let water = Composition { water: Fraction::WHOLE, ..Composition::default() };
/// let k = mixture_conductivity(&water, Temperature::celsius(20.0), Arrangement::Series);
/// assert_eq!(format!("{:.4}", k.as_watts_per_metre_kelvin()), "0.6037");
/// ```
#[must_use]
pub fn mixture_conductivity(food: &Composition, temperature: Temperature, arrangement: Arrangement) -> Conductivity {
    let volume = |part: Component, share: f64| share / component_density(part, temperature).as_kilograms_per_cubic_metre();
    let k = |part: Component| component_conductivity(part, temperature).as_watts_per_metre_kelvin();
    let whole: f64 = food.parts().map(|(part, share)| volume(part, share)).sum();
    let mean = |of: fn(f64) -> f64| -> f64 { food.parts().map(|(part, share)| volume(part, share) / whole * of(k(part))).sum() };
    Conductivity::watts_per_metre_kelvin(match arrangement {
        Arrangement::Parallel => mean(|k| k),
        Arrangement::Series => 1.0 / mean(|k| 1.0 / k),
        Arrangement::Geometric => libm::exp(mean(libm::log)),
    })
}
