//! Solving a tridiagonal system in place, by elimination without pivoting (Thomas 1949).

/// A tridiagonal system; `lower[0]` and the last of `upper` are zero.
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
        let (mut upper, mut right) = (0.0, 0.0);
        let rows = self.lower.iter().zip(&self.diagonal).zip(self.upper.iter_mut().zip(&mut self.right));
        for ((lower, diagonal), (u, r)) in rows {
            let pivot = 1.0 / (diagonal - lower * upper);
            upper = *u * pivot;
            right = (*r - lower * right) * pivot;
            (*u, *r) = (upper, right);
        }
        let mut next = 0.0;
        for (u, r) in self.upper.iter().zip(&mut self.right).rev() {
            next = *r - u * next;
            *r = next;
        }
    }
}
