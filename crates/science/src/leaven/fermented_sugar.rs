//! What yeast makes of sugar when it ferments it completely.

use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "leaven::fermented_sugar",
    source: "iupac-atomic-weights",
    place: "stoichiometry of C₆H₁₂O₆ → 2 C₂H₅OH + 2 CO₂ (Gay-Lussac)",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.0, to: 100_000.0 }],
};

/// The sugar that is fermented.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sugar {
    /// Glucose or fructose, 180.156 g/mol: two moles of each product.
    Hexose,
    /// Sucrose or maltose, 342.297 g/mol, split with water first: four moles of each product.
    Disaccharide,
}

/// What comes of fermented sugar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Products {
    /// Carbon dioxide, 44.010 g/mol.
    pub carbon_dioxide: Mass,
    /// Ethanol, 46.069 g/mol.
    pub ethanol: Mass,
}

/// Returns carbon dioxide and ethanol of completely fermented sugar.
///
/// ```text
/// m_i = m · n · M_i / M
/// ```
///
/// | symbol | meaning                                   | unit    |
/// |--------|-------------------------------------------|---------|
/// | `m`    | sugar                                     | g       |
/// | `n`    | moles of a product from a mole of sugar   | mol/mol |
/// | `M`    | molar mass                                | g/mol   |
///
/// An upper limit: yeast that grows or makes glycerol gives a few percent less. Linear everywhere.
///
/// ```
/// # use quantity::Mass;
/// use science::leaven::fermented_sugar::{Sugar, products};
/// let gas = products(Mass::grams(1.0), Sugar::Hexose).carbon_dioxide;
/// assert_eq!(format!("{:.4} g", gas.as_grams()), "0.4886 g");
/// ```
#[must_use]
pub fn products(sugar: Mass, kind: Sugar) -> Products {
    let (moles, molar_mass) = match kind {
        Sugar::Hexose => (2.0, 180.156),
        Sugar::Disaccharide => (4.0, 342.297),
    };
    let ethanol = sugar * (moles * 46.069 / molar_mass);
    Products { carbon_dioxide: sugar * (moles * super::CARBON_DIOXIDE_MOLAR_MASS / molar_mass), ethanol }
}
