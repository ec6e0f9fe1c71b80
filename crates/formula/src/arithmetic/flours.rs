//! Flour blends and their protein.

use crate::ingredient::{Figure, Ingredient};
use quantity::Fraction;
use std::fmt;

/// Why two flours cannot be blended to a protein.
#[derive(Clone, Debug, PartialEq)]
pub enum FlourFault {
    /// One of them does not count as flour; its title.
    NoFlour(String),
    /// No source gives the protein of a flour; its title.
    Unknown(String),
    /// The target lies outside what the two flours span.
    OutOfReach {
        /// The weaker flour's protein.
        from: Fraction,
        /// The stronger flour's protein.
        to: Fraction,
    },
}

impl fmt::Display for FlourFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use quantity::print::percent;
        match self {
            Self::NoFlour(title) => write!(f, "“{title}” does not count as flour"),
            Self::Unknown(title) => write!(f, "the protein of “{title}” is not known"),
            Self::OutOfReach { from, to } => {
                write!(f, "the two flours reach from {} to {} protein", percent(*from, 1), percent(*to, 1))
            }
        }
    }
}

/// The protein of flours with their shares; none if a flour's protein is not known.
#[must_use]
pub fn blended_protein(flours: &[(&Ingredient, Fraction)]) -> Option<Fraction> {
    let whole: Fraction = flours.iter().map(|(_, share)| *share).sum();
    let sum = flours.iter().try_fold(0.0, |sum, (flour, share)| {
        Some(sum + flour.composition.share(Figure::Protein)?.as_ratio() * share.as_ratio())
    })?;
    Some(Fraction::ratio(sum / whole.as_ratio()))
}

/// The share of the first of two flours with which the blend has that protein.
///
/// # Errors
/// [`FlourFault`] if one is no flour, a protein is not known or the target is out of reach.
pub fn two_flours(first: &Ingredient, second: &Ingredient, target: Fraction) -> Result<Fraction, FlourFault> {
    if let Some(other) = [first, second].into_iter().find(|one| one.flour_share().as_ratio() < 1.0 - 1e-9) {
        return Err(FlourFault::NoFlour(other.title.clone()));
    }
    let protein =
        |flour: &Ingredient| flour.composition.share(Figure::Protein).ok_or_else(|| FlourFault::Unknown(flour.title.clone()));
    let (a, b) = (protein(first)?, protein(second)?);
    let share = (target - b) / (a - b);
    if share.is_finite() && (-1e-9..=1.0 + 1e-9).contains(&share) {
        return Ok(Fraction::ratio(share.clamp(0.0, 1.0)));
    }
    Err(FlourFault::OutOfReach { from: a.min(b), to: a.max(b) })
}
