//! What a food holds and how a label in Europe or America states it.
//!
//! The laws behind the figures change: show each with its source and "check your local authority".

pub mod added_water;
pub mod american_energy;
pub mod american_rounding;
pub mod american_tolerance;
pub mod carbohydrate;
pub mod cooking;
pub mod european_energy;
pub mod european_rounding;
pub mod front_of_pack;
pub mod printed;
pub mod reference_amounts;
pub mod salt;
pub mod serving;
pub mod tolerance;

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[
    &european_energy::EQUATION,
    &american_energy::EQUATION,
    &carbohydrate::EQUATION,
    &salt::EQUATION,
    &cooking::EQUATION,
    &added_water::EQUATION,
    &european_rounding::EQUATION,
    &american_rounding::EQUATION,
    &tolerance::EQUATION,
    &american_tolerance::EQUATION,
    &reference_amounts::EQUATION,
    &serving::EQUATION,
    &front_of_pack::EQUATION,
];
