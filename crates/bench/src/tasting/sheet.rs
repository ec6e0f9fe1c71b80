//! What was answered at a seat, cup by cup: all that an analysis is told.

use super::asked::{Wrong, asked, read};
use super::lay::Seat;
use formula::read::Tasting;

/// A seat with its answers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// The seat's number, from 1.
    pub seat: u32,
    /// What its reference was, where there was one.
    pub reference: Option<usize>,
    /// Its cups in the order of tasting.
    pub cups: Vec<Tasted>,
}

/// A cup with what was said of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tasted {
    /// Its three figures.
    pub code: u16,
    /// What was in it.
    pub sample: usize,
    /// A figure for each thing asked; none where it was not answered.
    pub answers: Vec<Option<u32>>,
}

impl Sheet {
    /// A seat that has answered nothing yet.
    #[must_use]
    pub fn empty(tasting: &Tasting, number: u32, seat: &Seat) -> Self {
        let scales = asked(tasting).len();
        let cup = |cup: &super::Cup| Tasted { code: cup.code, sample: cup.sample, answers: vec![None; scales] };
        Self { seat: number, reference: seat.reference, cups: seat.cups.iter().map(cup).collect() }
    }

    /// Takes an answer down; a later one stands in the place of an earlier one.
    ///
    /// # Errors
    /// [`Wrong`] says why it is none.
    pub fn take(&mut self, tasting: &Tasting, seat: &Seat, item: &str, value: &str) -> Result<(), Wrong> {
        for (cup, scale, figure) in read(tasting, seat, item, value)? {
            self.cups[cup].answers[scale] = Some(figure);
        }
        Ok(())
    }

    /// Whether everything was answered.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        !self.cups.is_empty() && self.cups.iter().all(|cup| cup.answers.iter().all(Option::is_some))
    }

    /// Whether nothing was answered.
    #[must_use]
    pub fn is_silent(&self) -> bool {
        self.cups.iter().all(|cup| cup.answers.iter().all(Option::is_none))
    }

    /// The figure of each sample on a scale; for a whole sheet with every sample once.
    pub(super) fn figures(&self, samples: usize, scale: usize) -> Option<Vec<f64>> {
        let of = |sample: usize| self.cups.iter().find(|cup| cup.sample == sample)?.answers.get(scale).copied().flatten();
        (0..samples).map(|sample| of(sample).map(f64::from)).collect()
    }

    /// What was in the cup that was chosen.
    pub(super) fn chosen(&self) -> Option<usize> {
        self.cups.iter().find(|cup| cup.answers.first() == Some(&Some(1))).map(|cup| cup.sample)
    }
}
