//! The British front-of-pack colours for food.

use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::front_of_pack",
    source: "uk-front-of-pack",
    place: "bands per 100 g of food",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g in 100 g", from: 0.0, to: 100.0 }],
};

/// What is coloured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Nutrient {
    /// Fat: low to 3 g, high above 17.5 g.
    Fat,
    /// Saturates: low to 1.5 g, high above 5 g.
    Saturates,
    /// Sugars: low to 5 g, high above 22.5 g.
    Sugars,
    /// Salt: low to 0.3 g, high above 1.5 g.
    Salt,
}

/// The band of a content.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Band {
    /// Green.
    Low,
    /// Amber.
    Medium,
    /// Red.
    High,
}

/// Returns the band of a content in 100 g of food, or none for what is no number.
///
/// ```text
/// low: m ≤ low limit     high: m > high limit     fat 3/17.5, saturates 1.5/5, sugars 5/22.5, salt 0.3/1.5 g
/// ```
///
/// | symbol | meaning             | unit       |
/// |--------|---------------------|------------|
/// | `m`    | unrounded content   | g in 100 g |
///
/// For food, not drinks; large portions have limits of their own that are not here. Guidance of 2020.
///
/// ```
/// # use quantity::Mass;
/// use science::nutrition::front_of_pack::{Band, Nutrient, band};
/// assert_eq!(band(Nutrient::Fat, Mass::grams(9.2)), Some(Band::Medium));
/// ```
#[must_use]
pub fn band(nutrient: Nutrient, content: Mass) -> Option<Band> {
    let (low, high) = match nutrient {
        Nutrient::Fat => (3.0, 17.5),
        Nutrient::Saturates => (1.5, 5.0),
        Nutrient::Sugars => (5.0, 22.5),
        Nutrient::Salt => (0.3, 1.5),
    };
    match content.as_grams() {
        m if m.is_nan() => None,
        m if m <= low => Some(Band::Low),
        m if m > high => Some(Band::High),
        _ => Some(Band::Medium),
    }
}
