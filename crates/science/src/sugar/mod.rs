//! Sugar and fruit: syrups by their Brix, how they boil, pour, dissolve and pass a strainer.
//!
//! Brix is the share of sucrose by mass; a refractometer reads other sugars nearly alike.

pub mod boil_off;
pub mod boiling_point;
pub mod density;
pub mod genotelle;
pub mod honey;
pub mod inversion;
pub mod pour;
pub mod pulp;
pub mod refractive_index;
pub mod refractometer;
pub mod simmer;
pub mod solubility;
pub mod stage;
pub mod strainer;
pub mod sucrose_boiling_point;
pub mod trade_density;
pub mod viscosity;
pub mod warm_density;
pub mod water_density;
pub mod water_viscosity;

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[
    &water_density::EQUATION,
    &density::EQUATION,
    &warm_density::EQUATION,
    &trade_density::EQUATION,
    &refractive_index::EQUATION,
    &refractometer::EQUATION,
    &water_viscosity::EQUATION,
    &viscosity::EQUATION,
    &genotelle::EQUATION,
    &pour::EQUATION,
    &honey::EQUATION,
    &solubility::EQUATION,
    &inversion::EQUATION,
    &boiling_point::EQUATION,
    &sucrose_boiling_point::EQUATION,
    &stage::EQUATION,
    &boil_off::EQUATION,
    &simmer::EQUATION,
    &strainer::EQUATION,
    &pulp::EQUATION,
];

/// The place where a rising function reaches a value between two ends, to 2⁻⁵⁰ of their distance, by halving;
/// the nearer end where it does not.
fn where_reached(value: f64, ends: (f64, f64), rising: impl Fn(f64) -> f64) -> f64 {
    if value.is_nan() {
        return f64::NAN;
    }
    let (mut low, mut high) = ends;
    for _ in 0..50 {
        let middle = f64::midpoint(low, high);
        if rising(middle) < value {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}
