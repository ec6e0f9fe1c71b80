//! What an egg of a size class gives: shell, white and yolk.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "measure::egg",
    source: "cotterill-geiger-1977",
    place: "shares of shell, white and yolk, rounded within the ranges of later tables",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "m", unit: "g", from: 35.0, to: 90.0 }],
};

/// The shell's share of an egg; published 8 to 12 %.
pub const SHELL: Fraction = Fraction::percent(11.0);
/// The white's share of an egg; published 57 to 63 %.
pub const WHITE: Fraction = Fraction::percent(59.0);
/// The yolk's share of an egg; published 28 to 31 %.
pub const YOLK: Fraction = Fraction::percent(30.0);

/// The entries of `data/eggs.toml`, as text.
pub const DATA: &str = include_str!("../../data/eggs.toml");

/// Whose size classes are meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grading {
    /// XL, L, M, S by the single egg: Delegated Regulation (EU) 2023/2465, before it Regulation (EC) 589/2008.
    European,
    /// Jumbo to peewee by the dozen's least net weight.
    American,
}

/// A size class of eggs in the shell.
#[derive(Clone, Debug, PartialEq)]
pub struct SizeClass {
    /// Whose class it is.
    pub grading: Grading,
    /// Its name as printed on the box.
    pub name: String,
    /// The lightest egg of the class, or the average egg of the lightest dozen.
    pub from: Option<Mass>,
    /// The class ends below this mass.
    pub below: Option<Mass>,
    /// The egg to reckon with.
    pub usual: Mass,
    /// Where the figures come from.
    pub origin: Origin,
}

/// What an egg is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// The shell.
    pub shell: Mass,
    /// The white.
    pub white: Mass,
    /// The yolk.
    pub yolk: Mass,
    /// White and yolk together: what goes into the bowl.
    pub without_shell: Mass,
}

static CLASSES: LazyLock<Vec<SizeClass>> = LazyLock::new(|| {
    entry::read(DATA, "class", |row| {
        let grading = match row.word("grading")?.as_str() {
            "european" => Grading::European,
            "american" => Grading::American,
            _ => return None,
        };
        // An American class is stated in ounces a dozen.
        let from = row.number("from_grams").map(Mass::grams);
        let from = from.or_else(|| row.number("dozen_ounces").map(|dozen| Mass::ounces(dozen / 12.0)));
        let usual = row.number("usual_grams").map(Mass::grams).or(from)?;
        let below = row.number("below_grams").map(Mass::grams);
        Some(SizeClass { grading, name: row.word("name")?, from, below, usual, origin: row.origin()? })
    })
});

/// Every size class, largest first in each grading.
#[must_use]
pub fn classes() -> &'static [SizeClass] {
    &CLASSES
}

/// The class of that name.
#[must_use]
pub fn class(grading: Grading, name: &str) -> Option<&'static SizeClass> {
    CLASSES.iter().find(|class| class.grading == grading && class.name.eq_ignore_ascii_case(name))
}

/// The European class of an egg weighed in its shell.
///
/// ```
/// # use quantity::Mass;
/// let class = science::measure::egg::european(Mass::grams(63.0));
/// assert_eq!(class.map(|class| class.name.as_str()), Some("L"));
/// ```
#[must_use]
pub fn european(with_shell: Mass) -> Option<&'static SizeClass> {
    CLASSES.iter().filter(|class| class.grading == Grading::European).find(|class| {
        let heavy_enough = class.from.is_none_or(|from| with_shell >= from);
        heavy_enough && class.below.is_none_or(|below| with_shell < below)
    })
}

/// Returns what an egg weighed in its shell is made of.
///
/// ```text
/// shell = 0.11·m    white = 0.59·m    yolk = 0.30·m
/// ```
///
/// | symbol | meaning                     | unit |
/// |--------|-----------------------------|------|
/// | `m`    | mass of the egg in its shell | g   |
///
/// Valid for hens' eggs of 35 to 90 g; outside, the shares are kept, though small eggs have relatively
/// more yolk. Shares rounded from memory of Cotterill & Geiger (1977) and later tables.
///
/// ```
/// # use quantity::Mass;
/// let parts = science::measure::egg::parts(Mass::grams(58.0));
/// assert_eq!(format!("{:.1} g", parts.without_shell.as_grams()), "51.6 g");
/// ```
#[must_use]
pub fn parts(with_shell: Mass) -> Parts {
    let (white, yolk) = (with_shell * WHITE, with_shell * YOLK);
    Parts { shell: with_shell * SHELL, white, yolk, without_shell: white + yolk }
}
