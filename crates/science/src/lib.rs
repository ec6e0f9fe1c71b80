//! Published equations of the trade: one equation a file, grouped by phenomenon, each with its
//! source, its valid range and reference values from outside in `reference/`.

pub mod entry;
pub mod equation;
pub mod ferment;
pub mod heat;
pub mod keeping;
pub mod leaven;
pub mod measure;
pub mod numeric;
pub mod nutrition;
pub mod sensory;
pub mod source;
pub mod sugar;

pub use equation::{Equation, Outside, Standing, Valid};

/// Every equation of the room, in the order in which the documentation lists them.
#[must_use]
pub fn equations() -> Vec<&'static Equation> {
    [
        heat::EQUATIONS,
        ferment::EQUATIONS,
        sugar::EQUATIONS,
        keeping::EQUATIONS,
        leaven::EQUATIONS,
        measure::EQUATIONS,
        nutrition::EQUATIONS,
        sensory::EQUATIONS,
        numeric::EQUATIONS,
    ]
    .concat()
}
