//! Solving a tridiagonal system in place, by elimination without pivoting (Thomas 1949).

/// A tridiagonal system; `lower[0]` and the last of `upper` are not used.
#[derive(Default)]
pub(super) struct Tridiagonal {
    pub lower: Vec<f64>,
    pub diagonal: Vec<f64>,
    pub upper: Vec<f64>,
    pub right: Vec<f64>,
}

impl Tridiagonal {
    pub fn sized(n: usize) -> Self {
        let zeros = || vec![0.0; n];
        Self { lower: zeros(), diagonal: zeros(), upper: zeros(), right: zeros() }
    }

    /// Leaves the solution in `right`.
    pub fn solve(&mut self) {
        let n = self.diagonal.len();
        for i in 1..n {
            let factor = self.lower[i] / self.diagonal[i - 1];
            self.diagonal[i] -= factor * self.upper[i - 1];
            self.right[i] -= factor * self.right[i - 1];
        }
        for i in (0..n).rev() {
            let next = if i + 1 < n { self.upper[i] * self.right[i + 1] } else { 0.0 };
            self.right[i] = (self.right[i] - next) / self.diagonal[i];
        }
    }
}
