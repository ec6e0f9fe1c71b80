//! Numerical methods with stated order, tolerance and step limit.

use crate::Equation;

pub mod tridiagonal;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[&tridiagonal::EQUATION];
