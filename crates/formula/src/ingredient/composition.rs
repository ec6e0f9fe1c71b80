//! What 100 g of an ingredient hold. An empty cell stays empty: it is never zero.

use super::Figure;
use quantity::Fraction;

/// The figures of an ingredient per 100 g edible portion, each known or not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Composition([Option<f64>; Figure::ALL.len()]);

impl Composition {
    /// A figure, if a source gives it.
    #[must_use]
    pub const fn get(&self, figure: Figure) -> Option<f64> {
        self.0[figure as usize]
    }

    /// States a figure.
    pub const fn set(&mut self, figure: Figure, value: f64) {
        self.0[figure as usize] = Some(value);
    }

    /// A figure in gram as a share of the whole, if a source gives it.
    #[must_use]
    pub fn share(&self, figure: Figure) -> Option<Fraction> {
        self.get(figure).map(Fraction::percent)
    }

    /// The figures that are stated here laid over those of another.
    #[must_use]
    pub fn over(&self, other: &Self) -> Self {
        let mut laid = other.clone();
        for (own, below) in self.0.iter().zip(&mut laid.0) {
            if own.is_some() {
                *below = *own;
            }
        }
        laid
    }

    /// The sum of what should make up 100 g; fibre is within carbohydrate by difference, or beside
    /// available carbohydrate.
    #[must_use]
    pub fn sum(&self) -> f64 {
        let of = |figure| self.get(figure).unwrap_or(0.0);
        let carbohydrate =
            self.get(Figure::Carbohydrate).unwrap_or_else(|| of(Figure::AvailableCarbohydrate) + of(Figure::Fibre));
        of(Figure::Water) + of(Figure::Protein) + of(Figure::Fat) + carbohydrate + of(Figure::Ash) + of(Figure::Alcohol)
    }

    /// Whether every figure that [`Self::sum`] adds is known.
    #[must_use]
    pub fn is_complete(&self) -> bool {
        let known = |figure| self.get(figure).is_some();
        let carbohydrate = known(Figure::Carbohydrate) || (known(Figure::AvailableCarbohydrate) && known(Figure::Fibre));
        carbohydrate && [Figure::Water, Figure::Protein, Figure::Fat, Figure::Ash].into_iter().all(known)
    }

    /// The composition of a mix; a figure is known only if every part has it.
    #[must_use]
    pub fn mixed<'c>(parts: impl Iterator<Item = (&'c Self, Fraction)> + Clone) -> Self {
        let mut mix = Self::default();
        for figure in Figure::ALL {
            let total = parts.clone().try_fold(0.0, |sum, (part, share)| Some(sum + part.get(*figure)? * share.as_ratio()));
            mix.0[*figure as usize] = total;
        }
        mix
    }
}
