//! Tasting panels: can they tell two apart, which do they rank first, in which order are they served.

pub mod all_pairs;
pub mod blind_code;
pub mod discriminators;
pub mod forced_choice;
pub mod friedman;
pub mod hedonic;
pub mod page;
pub mod paired_power;
pub mod panel_size;
pub mod ranking_power;
pub mod ranks;
pub mod serving_order;
pub mod signed_rank;
pub mod similarity;

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[
    &forced_choice::EQUATION,
    &discriminators::EQUATION,
    &similarity::EQUATION,
    &panel_size::EQUATION,
    &friedman::EQUATION,
    &all_pairs::EQUATION,
    &page::EQUATION,
    &hedonic::EQUATION,
    &signed_rank::EQUATION,
    &paired_power::EQUATION,
    &ranking_power::EQUATION,
    &serving_order::EQUATION,
    &blind_code::EQUATION,
];
