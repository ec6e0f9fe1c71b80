//! Numerical methods with stated order, tolerance and step limit.

use crate::Equation;

pub mod dormand_prince;
pub mod exponential;
pub mod least_squares;
pub mod maximum;
pub mod root;
pub mod tridiagonal;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[
    &tridiagonal::EQUATION,
    &dormand_prince::EQUATION,
    &exponential::EQUATION,
    &root::EQUATION,
    &maximum::EQUATION,
    &least_squares::EQUATION,
];
