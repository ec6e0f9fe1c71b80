//! Energy by the factors of European law: kilojoules and kilocalories, each from its own.

use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::european_energy",
    source: "eu-1169-2011",
    place: "Annex XIV",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g in 100 g", from: 0.0, to: 100.0 }],
};

/// What a food holds in the sense of European law; carbohydrate excludes fibre and includes polyols.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Contents {
    /// Total lipids.
    pub fat: Mass,
    /// Metabolised carbohydrate: sugars, starch and polyols, without fibre.
    pub carbohydrate: Mass,
    /// The polyols within the carbohydrate, erythritol not among them.
    pub polyols: Mass,
    /// The erythritol within the carbohydrate, which counts nothing.
    pub erythritol: Mass,
    /// Fibre.
    pub fibre: Mass,
    /// Nitrogen times 6.25.
    pub protein: Mass,
    /// Ethanol.
    pub alcohol: Mass,
    /// Organic acids.
    pub organic_acids: Mass,
    /// Salatrims, fats with short acids.
    pub salatrims: Mass,
}

/// Energy as a label declares it; the two figures are not multiples of each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeclaredEnergy {
    /// By the factors in kJ/g.
    pub kilojoules: f64,
    /// By the factors in kcal/g.
    pub kilocalories: f64,
}

/// kJ and kcal per gram.
type Factor = (f64, f64);
const CARBOHYDRATE: Factor = (17.0, 4.0);
const POLYOLS: Factor = (10.0, 2.4);
const ERYTHRITOL: Factor = (0.0, 0.0);
const PROTEIN: Factor = (17.0, 4.0);
const FAT: Factor = (37.0, 9.0);
const SALATRIMS: Factor = (25.0, 6.0);
const ALCOHOL: Factor = (29.0, 7.0);
const ORGANIC_ACIDS: Factor = (13.0, 3.0);
const FIBRE: Factor = (8.0, 2.0);

/// Returns the energy of a food for a European label.
///
/// ```text
/// E = Σ f·m      kJ/g:   carbohydrate 17, polyols 10, protein 17, fat 37, salatrims 25, alcohol 29,
///                        organic acids 13, fibre 8, erythritol 0
///                kcal/g: 4, 2.4, 4, 9, 6, 7, 3, 2, 0
/// ```
///
/// | symbol | meaning                                | unit           |
/// |--------|----------------------------------------|----------------|
/// | `E`    | energy, summed once in kJ, once in kcal | kJ, kcal      |
/// | `m`    | mass of a component                    | g              |
/// | `f`    | its factor                             | kJ/g or kcal/g |
///
/// Valid for 0 to 100 g in 100 g; the sum is linear outside too. The polyols are taken out of the
/// carbohydrate before it is counted. Regulation (EU) No 1169/2011, Annex XIV.
///
/// ```
/// # use quantity::Mass;
/// use science::nutrition::european_energy::{Contents, energy};
/// let g = Mass::grams;
/// let cake = Contents { fat: g(9.2), carbohydrate: g(28.4), protein: g(6.3), fibre: g(1.1), ..Contents::default() };
/// let energy = energy(&cake);
/// assert_eq!(format!("{:.0} kJ / {:.0} kcal", energy.kilojoules, energy.kilocalories), "939 kJ / 224 kcal");
/// ```
#[must_use]
pub fn energy(contents: &Contents) -> DeclaredEnergy {
    let digested = contents.carbohydrate - contents.polyols - contents.erythritol;
    let parts = [
        (digested, CARBOHYDRATE),
        (contents.polyols, POLYOLS),
        (contents.erythritol, ERYTHRITOL),
        (contents.protein, PROTEIN),
        (contents.fat, FAT),
        (contents.salatrims, SALATRIMS),
        (contents.alcohol, ALCOHOL),
        (contents.organic_acids, ORGANIC_ACIDS),
        (contents.fibre, FIBRE),
    ];
    DeclaredEnergy {
        kilojoules: parts.iter().map(|(mass, factor)| mass.as_grams() * factor.0).sum(),
        kilocalories: parts.iter().map(|(mass, factor)| mass.as_grams() * factor.1).sum(),
    }
}
