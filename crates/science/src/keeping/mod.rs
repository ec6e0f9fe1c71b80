//! Keeping food: water activity, sourness, alcohol, heat and time against what grows.
//!
//! Every verdict here is guidance from a published table. None certifies a food or a shelf life:
//! show the source and "check your local authority".

pub mod alcohol_mix;
pub mod alcohol_retained;
pub mod alcohol_strength;
pub mod cooking_rule;
pub mod cooling_rule;
pub mod danger_zone;
pub mod food_code;
pub mod growth_limits;
pub mod history;
pub mod holding;
pub mod lethality;
pub mod listeria;
pub mod salmonella;
pub mod uk_equivalents;
pub mod water_activity;

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[
    &water_activity::norrish::EQUATION,
    &water_activity::ross::EQUATION,
    &water_activity::money_born::EQUATION,
    &water_activity::table_salt::EQUATION,
    &water_activity::ethanol::EQUATION,
    &water_activity::mixture::EQUATION,
    &growth_limits::EQUATION,
    &food_code::EQUATION,
    &listeria::EQUATION,
    &alcohol_strength::EQUATION,
    &alcohol_mix::EQUATION,
    &alcohol_retained::EQUATION,
    &lethality::EQUATION,
    &uk_equivalents::EQUATION,
    &salmonella::EQUATION,
    &cooking_rule::EQUATION,
    &cooling_rule::EQUATION,
    &danger_zone::EQUATION,
    &holding::EQUATION,
];
