//! Soda, acids and baking powder: what neutralises what, and how much gas it gives.

pub mod acid;
pub mod baking_powder;
pub mod fermented_sugar;
pub mod gas_volume;
pub mod neutralising;
pub mod overrun;
pub mod soda_gas;

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[
    &soda_gas::EQUATION,
    &gas_volume::EQUATION,
    &neutralising::EQUATION,
    &acid::EQUATION,
    &baking_powder::EQUATION,
    &fermented_sugar::EQUATION,
    &overrun::EQUATION,
];

/// Molar mass of sodium hydrogen carbonate, g/mol; IUPAC standard atomic weights.
pub const SODA_MOLAR_MASS: f64 = 84.007;
/// Molar mass of carbon dioxide, g/mol; IUPAC standard atomic weights.
pub const CARBON_DIOXIDE_MOLAR_MASS: f64 = 44.010;
