//! What an equation says of itself: where it comes from and where it holds.

/// Where an equation comes from and where it holds; one constant beside each function.
#[derive(Debug)]
pub struct Equation {
    /// Its path in this room, such as `sugar::density`.
    pub name: &'static str,
    /// A key of `sources/*.toml`.
    pub source: &'static str,
    /// The page, table, section or equation number in the source.
    pub place: &'static str,
    /// How well it is founded.
    pub standing: Standing,
    /// The inputs' ranges in which it was validated, in the order of the arguments.
    pub valid: &'static [Valid],
}

/// How well an equation or parameter is founded; shown wherever its result is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// As printed in the source.
    Published,
    /// The form is published, a constant was fitted to published observations.
    Fitted,
    /// A custom of the trade without a citable source.
    CommonPractice,
    /// Quoted from memory; the source could not be seen.
    FromMemory,
}

/// A range of validity of one input.
#[derive(Debug)]
pub struct Valid {
    /// The symbol in the equation's table.
    pub symbol: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// The lowest validated value.
    pub from: f64,
    /// The highest validated value.
    pub to: f64,
}

/// An input outside the range in which its equation was validated. The value is still computed.
#[derive(Debug)]
pub struct Outside {
    /// The range that was left.
    pub valid: &'static Valid,
    /// The input.
    pub value: f64,
}

impl Equation {
    /// The inputs that lie outside their ranges, given in the order of `valid`.
    #[must_use]
    pub fn outside(&'static self, inputs: &[f64]) -> Vec<Outside> {
        self.valid
            .iter()
            .zip(inputs)
            .filter(|(valid, value)| !(valid.from..=valid.to).contains(*value))
            .map(|(valid, value)| Outside { valid, value: *value })
            .collect()
    }
}
