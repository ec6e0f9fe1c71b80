//! Energy by the general factors of American law.

use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::american_energy",
    source: "21-cfr-101-9",
    place: "101.9(c)(1)(i)",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "m", unit: "g in a serving", from: 0.0, to: 1000.0 }],
};

/// What a serving holds in the sense of American law; carbohydrate includes fibre and sugar alcohols.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Serving {
    /// Total fat.
    pub fat: Mass,
    /// Total carbohydrate, with fibre and sugar alcohols.
    pub carbohydrate: Mass,
    /// The fibre within the carbohydrate that does not dissolve.
    pub insoluble_fibre: Mass,
    /// The fibre within the carbohydrate that dissolves but is not digested.
    pub soluble_fibre: Mass,
    /// Protein.
    pub protein: Mass,
    /// Ethanol.
    pub alcohol: Mass,
}

/// Which of the permitted methods is used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// 4 kcal for each gram of protein and total carbohydrate, 9 for fat.
    General,
    /// The same, without the insoluble fibre and with 2 kcal for each gram of soluble fibre.
    LessFibre,
}

/// A sugar alcohol with a factor of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SugarAlcohol {
    /// 2.0 kcal/g.
    Isomalt,
    /// 2.0 kcal/g.
    Lactitol,
    /// 2.4 kcal/g.
    Xylitol,
    /// 2.1 kcal/g.
    Maltitol,
    /// 2.6 kcal/g.
    Sorbitol,
    /// 3.0 kcal/g.
    HydrogenatedStarchHydrolysate,
    /// 1.6 kcal/g.
    Mannitol,
    /// 0 kcal/g.
    Erythritol,
}

impl SugarAlcohol {
    /// Kilocalories a gram, 21 CFR 101.9(c)(1)(i)(F), from memory.
    #[must_use]
    pub const fn kilocalories_per_gram(self) -> f64 {
        match self {
            Self::Isomalt | Self::Lactitol => 2.0,
            Self::Xylitol => 2.4,
            Self::Maltitol => 2.1,
            Self::Sorbitol => 2.6,
            Self::HydrogenatedStarchHydrolysate => 3.0,
            Self::Mannitol => 1.6,
            Self::Erythritol => 0.0,
        }
    }
}

const PROTEIN: f64 = 4.0;
const CARBOHYDRATE: f64 = 4.0;
const FAT: f64 = 9.0;
const ALCOHOL: f64 = 7.0;
const SOLUBLE_FIBRE: f64 = 2.0;

/// Returns the kilocalories of a serving for an American label, before rounding.
///
/// ```text
/// E = 9·fat + 4·carbohydrate + 4·protein + 7·alcohol          general
/// E = … − 4·(insoluble + soluble fibre) + 2·soluble fibre      less fibre
/// ```
///
/// | symbol  | meaning             | unit |
/// |---------|---------------------|------|
/// | `E`     | energy              | kcal |
/// | the rest | masses in a serving | g   |
///
/// Valid for servings up to 1 kg; linear outside. 21 CFR 101.9(c)(1)(i), from memory; 7 kcal/g for
/// alcohol is the general Atwater factor.
///
/// ```
/// # use quantity::Mass;
/// use science::nutrition::american_energy::{Method, Serving, energy};
/// let g = Mass::grams;
/// let serving = Serving { fat: g(8.0), carbohydrate: g(37.0), protein: g(3.0), ..Serving::default() };
/// assert_eq!(energy(&serving, Method::General), 232.0);
/// ```
#[must_use]
pub fn energy(serving: &Serving, method: Method) -> f64 {
    let (insoluble, soluble) = (serving.insoluble_fibre.as_grams(), serving.soluble_fibre.as_grams());
    let fibre = match method {
        Method::General => 0.0,
        Method::LessFibre => SOLUBLE_FIBRE * soluble - CARBOHYDRATE * (insoluble + soluble),
    };
    FAT * serving.fat.as_grams()
        + CARBOHYDRATE * serving.carbohydrate.as_grams()
        + PROTEIN * serving.protein.as_grams()
        + ALCOHOL * serving.alcohol.as_grams()
        + fibre
}
