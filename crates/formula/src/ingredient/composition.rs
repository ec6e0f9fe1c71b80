//! What 100 g of an ingredient hold. An empty cell stays empty: it is never zero.

use super::Figure;
use quantity::Fraction;

/// The figures of an ingredient per 100 g edible portion, each known or not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Composition([Option<f64>; Figure::ALL.len()]);

impl Composition {
    /// A figure, or what follows of itself where the source leaves it out: there are no sugars where there is no
    /// carbohydrate, no saturates where there is no fat, and carbohydrate without fibre is the difference of both.
    #[must_use]
    pub fn told(&self, figure: Figure) -> Option<f64> {
        let is_none = |whole: Figure| self.get(whole).is_some_and(|value| value <= 0.0);
        let whole = match figure {
            Figure::Saturates | Figure::Monounsaturates | Figure::Polyunsaturates | Figure::Trans => Figure::Fat,
            Figure::ProteinLabel => Figure::Protein,
            Figure::Sugars
            | Figure::Sucrose
            | Figure::Glucose
            | Figure::Fructose
            | Figure::Lactose
            | Figure::Maltose
            | Figure::Galactose
            | Figure::Starch
            | Figure::Fibre => Figure::Carbohydrate,
            Figure::AvailableCarbohydrate => {
                let difference = || Some((self.get(Figure::Carbohydrate)? - self.get(Figure::Fibre)?).max(0.0));
                return self.get(figure).or_else(difference);
            }
            _ => return self.get(figure),
        };
        self.get(figure).or_else(|| is_none(whole).then_some(0.0))
    }

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
