//! Leavening acids by name with the trade's neutralising values.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "leaven::acid",
    source: "bakers-dictionary",
    place: "neutralizing value; figures of the trade from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.0, to: 100_000.0 }],
};

/// The entries of `data/acids.toml`, as text.
pub const DATA: &str = include_str!("../../data/acids.toml");

/// A leavening acid.
#[derive(Clone, Debug, PartialEq)]
pub struct Acid {
    /// Its name.
    pub name: String,
    /// Soda neutralised by 100 of it, as a share.
    pub value: Fraction,
    /// Where the figure comes from.
    pub origin: Origin,
}

static ACIDS: LazyLock<Vec<Acid>> = LazyLock::new(|| {
    entry::read(DATA, "acid", |row| {
        let value = Fraction::percent(row.number("neutralising_value")?);
        Some(Acid { name: row.word("name")?, value, origin: row.origin()? })
    })
});

/// Every acid.
#[must_use]
pub fn all() -> &'static [Acid] {
    &ACIDS
}

/// The acid of that name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Acid> {
    ACIDS.iter().find(|acid| acid.name == name)
}

/// Returns the soda that the acid of a liquid neutralises, such as the lactic acid of buttermilk.
///
/// ```text
/// m_soda = m · c · NV
/// ```
///
/// | symbol   | meaning                     | unit |
/// |----------|-----------------------------|------|
/// | `m_soda` | soda neutralised            | g    |
/// | `m`      | the liquid                  | g    |
/// | `c`      | its acid                    | –    |
/// | `NV`     | neutralising value          | –    |
///
/// Linear everywhere. Trade figures from memory; stoichiometric where the entry says so.
///
/// ```
/// # use quantity::{Fraction, Mass};
/// use science::leaven::acid::{named, soda_in};
/// let lactic = named("lactic acid").expect("known");
/// let soda = soda_in(Mass::grams(240.0), Fraction::percent(0.8), lactic);
/// assert_eq!(format!("{:.2} g", soda.as_grams()), "1.79 g");
/// ```
#[must_use]
pub fn soda_in(liquid: Mass, concentration: Fraction, acid: &Acid) -> Mass {
    liquid * concentration * acid.value
}
