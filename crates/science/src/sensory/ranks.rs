//! Ranks that tasters give, ties shared evenly.

/// Ranks of a panel: one row a taster, one rank a sample.
#[derive(Clone, Debug, PartialEq)]
pub struct Ranks {
    rows: Vec<Vec<f64>>,
    samples: usize,
}

/// Why figures are not a panel's ranks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Fewer than two samples, or nobody.
    TooFew,
    /// A taster ranked more or fewer samples than the first.
    Uneven,
    /// A score is not a number.
    NotANumber,
}

impl Ranks {
    /// Ranks from scores or places, the lowest first; equal scores share their ranks.
    ///
    /// # Errors
    /// [`Fault`] when there is too little, rows differ in length, or a score is no number.
    ///
    /// ```
    /// use science::sensory::ranks::Ranks;
    /// let ranks = Ranks::of(&[vec![5.0, 7.0, 7.0]]).expect("one taster");
    /// assert_eq!(ranks.sums(), [1.0, 2.5, 2.5]);
    /// ```
    pub fn of(scores: &[Vec<f64>]) -> Result<Self, Fault> {
        let samples = scores.first().map_or(0, Vec::len);
        if samples < 2 {
            return Err(Fault::TooFew);
        }
        if scores.iter().any(|row| row.len() != samples) {
            return Err(Fault::Uneven);
        }
        if scores.iter().flatten().any(|score| score.is_nan()) {
            return Err(Fault::NotANumber);
        }
        Ok(Self { rows: scores.iter().map(|row| shared_ranks(row)).collect(), samples })
    }

    /// How many tasters.
    #[must_use]
    pub const fn tasters(&self) -> usize {
        self.rows.len()
    }

    /// How many samples.
    #[must_use]
    pub const fn samples(&self) -> usize {
        self.samples
    }

    /// Each taster's ranks.
    #[must_use]
    pub fn rows(&self) -> &[Vec<f64>] {
        &self.rows
    }

    /// The sum of each sample's ranks.
    #[must_use]
    pub fn sums(&self) -> Vec<f64> {
        (0..self.samples).map(|sample| self.rows.iter().map(|row| row[sample]).sum()).collect()
    }

    /// `Σ (t³ − t)` over all groups of `t` equal ranks.
    #[must_use]
    pub fn ties(&self) -> f64 {
        let of_one = |row: &Vec<f64>| row.iter().map(|rank| equal(row, *rank)).map(|t| t * t - 1.0).sum::<f64>();
        self.rows.iter().map(of_one).sum()
    }
}

fn equal(row: &[f64], value: f64) -> f64 {
    row.iter().filter(|other| **other == value).count() as f64
}

fn shared_ranks(row: &[f64]) -> Vec<f64> {
    let rank = |score: f64| {
        let below = row.iter().filter(|other| **other < score).count() as f64;
        below + f64::midpoint(1.0, equal(row, score))
    };
    row.iter().map(|score| rank(*score)).collect()
}
