//! Thermal conductivity of a crumb: a dense stuff with bubbles in it.

use crate::{Equation, Standing, Valid};
use quantity::{Conductivity, Fraction};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::porous_conductivity",
    source: "ashrae-2006",
    place: "ch. 9, thermal conductivity, Maxwell-Eucken model",
    standing: Standing::Published,
    valid: &[Valid { symbol: "ε", unit: "–", from: 0.0, to: 0.95 }],
};

/// The conductivity of dry air in pores, at about 60 °C (from memory).
pub const DRY_AIR: Conductivity = Conductivity::watts_per_metre_kelvin(0.028);

/// Returns the conductivity of a continuous stuff with pores dispersed in it.
///
/// ```text
/// k = k_c · (2·k_c + k_d − 2·ε·(k_c − k_d)) / (2·k_c + k_d + ε·(k_c − k_d))
/// ```
///
/// | symbol | meaning                          | unit    |
/// |--------|----------------------------------|---------|
/// | `k`    | conductivity of the whole        | W/(m K) |
/// | `k_c`  | of the continuous stuff          | W/(m K) |
/// | `k_d`  | of the gas in the pores          | W/(m K) |
/// | `ε`    | porosity, a share of the volume  | –       |
///
/// Exact without pores and with nothing but pores; for foams of more than about 0.95 air the walls
/// no longer hold together as assumed, yet the formula still answers.
/// ASHRAE Handbook, Refrigeration (2006), ch. 9, after Maxwell and Eucken.
///
/// ```
/// # use quantity::{Conductivity, Fraction};
/// # use science::heat::porous_conductivity::{DRY_AIR, porous_conductivity};
/// let dense = Conductivity::watts_per_metre_kelvin(0.4875);
/// let crumb = porous_conductivity(dense, DRY_AIR, Fraction::percent(30.5));
/// assert_eq!(format!("{:.3}", crumb.as_watts_per_metre_kelvin()), "0.308");
/// ```
#[must_use]
pub fn porous_conductivity(continuous: Conductivity, pores: Conductivity, porosity: Fraction) -> Conductivity {
    let (k_c, k_d) = (continuous.as_watts_per_metre_kelvin(), pores.as_watts_per_metre_kelvin());
    Conductivity::watts_per_metre_kelvin(maxwell_eucken(k_c, k_d, porosity.as_ratio()))
}

/// The same in plain numbers, for the inner loop of a cook.
pub(super) fn maxwell_eucken(k_c: f64, k_d: f64, porosity: f64) -> f64 {
    let (base, step) = (2.0 * k_c + k_d, porosity * (k_c - k_d));
    k_c * (base - 2.0 * step) / (base + step)
}
