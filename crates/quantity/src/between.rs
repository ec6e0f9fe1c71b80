//! A figure that may be a range: "12-18 h".

/// From one value to another; both ends are the same when a single figure was meant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Between<T> {
    /// The lower end.
    pub from: T,
    /// The upper end.
    pub to: T,
}

impl<T: Copy + PartialEq> Between<T> {
    /// A single figure.
    pub const fn just(value: T) -> Self {
        Self { from: value, to: value }
    }

    /// Whether only one figure was meant.
    pub fn is_single(&self) -> bool {
        self.from == self.to
    }

    /// The same range in another quantity.
    pub fn map<U>(self, f: impl Fn(T) -> U) -> Between<U> {
        Between { from: f(self.from), to: f(self.to) }
    }
}

impl Between<f64> {
    /// The figure half-way.
    #[must_use]
    pub const fn middle(self) -> f64 {
        f64::midpoint(self.from, self.to)
    }
}
