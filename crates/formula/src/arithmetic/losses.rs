//! Losses one after the other: they multiply, they do not add.

use quantity::{Fraction, Mass};

/// The share that is left after losses one after the other.
#[must_use]
pub fn chain(losses: &[Fraction]) -> Fraction {
    losses.iter().fold(Fraction::WHOLE, |left, loss| left.of(loss.left()))
}

/// What must be mixed so that so much is left after losses; none if they leave nothing.
#[must_use]
pub fn needed(finished: Mass, losses: &[Fraction]) -> Option<Mass> {
    let left = chain(losses);
    (left > Fraction::ZERO).then(|| finished / left.as_ratio())
}
