//! numeric.

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[];
