//! How far a measured content may lie from the declared one in America.

use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::american_tolerance",
    source: "21-cfr-101-9",
    place: "101.9(g)(3) to (5), from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "x", unit: "% of the declared", from: 0.0, to: 1000.0 }],
};

/// What a measured content is judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// Vitamins, minerals, protein, fibre added to a food (class I).
    Added,
    /// The same by nature, with carbohydrate, unsaturated fat and potassium (class II).
    ByNature,
    /// Calories, sugars, fat, saturated and trans fat, cholesterol, sodium.
    ToLimit,
}

/// Whether a food with this share of its declared content is labelled truly.
///
/// ```text
/// added:    x ≥ 100 %
/// by nature: x ≥ 80 %
/// to limit:  x ≤ 120 %
/// ```
///
/// | symbol | meaning                           | unit |
/// |--------|-----------------------------------|------|
/// | `x`    | measured over declared            | %    |
///
/// Reasonable excesses of what is wanted, and deficiencies of what is to be limited, within good practice are let
/// pass. The edges count as true; what is not a number does not. Code of Federal Regulations, 21 CFR 101.9(g), from
/// memory: read the current text.
///
/// ```
/// # use quantity::Fraction;
/// use science::nutrition::american_tolerance::{Group, true_to_label};
/// assert!(true_to_label(Group::ToLimit, Fraction::percent(120.0)));
/// assert!(!true_to_label(Group::ByNature, Fraction::percent(79.0)));
/// ```
#[must_use]
pub fn true_to_label(group: Group, measured: Fraction) -> bool {
    match group {
        Group::Added => measured >= Fraction::percent(100.0),
        Group::ByNature => measured >= Fraction::percent(80.0),
        Group::ToLimit => measured <= Fraction::percent(120.0),
    }
}
