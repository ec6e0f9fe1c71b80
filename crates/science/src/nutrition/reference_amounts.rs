//! European reference intakes and American daily values.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::Fraction;
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::reference_amounts",
    source: "eu-1169-2011",
    place: "Annex XIII; for America 21 CFR 101.9(c)(8) and (9)",
    standing: Standing::Published,
    valid: &[Valid { symbol: "x", unit: "of the nutrient's own unit", from: 0.0, to: 1.0e6 }],
};

/// The entries of `data/reference_amounts.toml`, as text.
pub const DATA: &str = include_str!("../../data/reference_amounts.toml");

/// Whose reference is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Region {
    /// Reference intakes and nutrient reference values of Regulation (EU) No 1169/2011.
    Europe,
    /// Daily values for adults and children of four years and more, as of 2016.
    America,
}

/// How much of a nutrient an adult is reckoned to take in a day.
#[derive(Clone, Debug, PartialEq)]
pub struct ReferenceAmount {
    /// Whose it is.
    pub region: Region,
    /// The nutrient.
    pub nutrient: String,
    /// The amount in the unit.
    pub amount: f64,
    /// The unit.
    pub unit: String,
    /// Where the figure comes from.
    pub origin: Origin,
}

static AMOUNTS: LazyLock<Vec<ReferenceAmount>> = LazyLock::new(|| {
    entry::read(DATA, "amount", |row| {
        Some(ReferenceAmount {
            region: match row.word("region")?.as_str() {
                "europe" => Region::Europe,
                "america" => Region::America,
                _ => return None,
            },
            nutrient: row.word("nutrient")?,
            amount: row.number("amount")?,
            unit: row.word("unit")?,
            origin: row.origin()?,
        })
    })
});

/// Every reference amount.
#[must_use]
pub fn all() -> &'static [ReferenceAmount] {
    &AMOUNTS
}

/// The reference amount of a nutrient, if there is one: Europe has none for fibre, America none for trans
/// fat and total sugars, and a label prints no percentage there.
#[must_use]
pub fn of(region: Region, nutrient: &str) -> Option<&'static ReferenceAmount> {
    AMOUNTS.iter().find(|entry| entry.region == region && entry.nutrient == nutrient)
}

/// Returns the share of a reference amount, before rounding.
///
/// ```text
/// p = x / R
/// ```
///
/// | symbol | meaning              | unit              |
/// |--------|----------------------|-------------------|
/// | `x`    | content              | the nutrient's own |
/// | `R`    | the reference amount | the same          |
///
/// Linear everywhere. Wherever it is printed in Europe, "reference intake of an average adult
/// (8400 kJ/2000 kcal)" stands by it.
///
/// ```
/// use science::nutrition::reference_amounts::{Region, of, share};
/// let fat = of(Region::Europe, "fat").expect("a reference intake");
/// assert_eq!(format!("{:.0} %", share(9.2, fat).as_percent()), "13 %");
/// ```
#[must_use]
pub fn share(content: f64, reference: &ReferenceAmount) -> Fraction {
    Fraction::ratio(content / reference.amount)
}
