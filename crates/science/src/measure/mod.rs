//! Weighing and spooning: what a scale can tell, what a spoon holds, what an egg gives, which yeast for which.

pub mod egg;
pub mod scale;
pub mod spoon;
pub mod thermometer;
pub mod yeast;

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] =
    &[&scale::EQUATION, &thermometer::EQUATION, &spoon::EQUATION, &egg::EQUATION, &yeast::EQUATION];
