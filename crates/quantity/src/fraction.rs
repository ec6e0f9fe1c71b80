//! A share of something, which a baker writes in percent.

use crate::define::quantity;

quantity! {
    /// A share, stored as the plain ratio: 2 % is 0.02.
    Fraction {
        /// A ratio of one to another.
        ratio, as_ratio: 1.0;
        /// So many percent.
        percent, as_percent: 0.01;
    }
}

impl Fraction {
    /// All of it.
    pub const WHOLE: Self = Self(1.0);

    /// What is left after this share is gone.
    #[must_use]
    pub const fn left(self) -> Self {
        Self(1.0 - self.0)
    }

    /// A share of this share: losses after losses multiply, they do not add.
    #[must_use]
    pub const fn of(self, other: Self) -> Self {
        Self(self.0 * other.0)
    }
}

impl std::ops::Mul<Fraction> for crate::Mass {
    type Output = Self;
    fn mul(self, share: Fraction) -> Self {
        self * share.as_ratio()
    }
}
