//! How the sugars at hand let yeast work.

use crate::{Equation, Standing, Valid};
use quantity::Amount;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::uptake",
    source: "monod-1949",
    place: "saturation in the sugar, maltose held back by hexose; constants from memory, insensitive",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "G", unit: "mol/kg flour", from: 0.0, to: 1.5 },
        Valid { symbol: "M", unit: "mol/kg flour", from: 0.0, to: 0.5 },
    ],
};

/// The constants of one yeast.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SugarUse {
    /// Hexose at which half the rate is reached.
    pub half_hexose: Amount,
    /// Maltose, as hexose, at which half its rate is reached.
    pub half_maltose: Amount,
    /// Hexose that halves the use of maltose.
    pub repression: Amount,
    /// Rate on maltose alone as a share of that on hexose.
    pub maltose_share: f64,
}

/// How much of its full rate a yeast reaches on each sugar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uptake {
    /// On hexose.
    pub hexose: f64,
    /// On maltose.
    pub maltose: f64,
}

impl Uptake {
    /// On both together, full supply being 1.
    #[must_use]
    pub const fn supply(self) -> f64 {
        (self.hexose + self.maltose).min(1.0)
    }
}

/// Returns how much of its full rate a yeast reaches on each sugar.
///
/// ```text
/// f_G = G/(K_G + G)
/// f_M = κ·M/(K_M + M)·K_i/(K_i + G)
/// S = min(1, f_G + f_M)
/// ```
///
/// | symbol  | meaning                            | value      | unit         |
/// |---------|------------------------------------|------------|--------------|
/// | `G` `M` | hexose; maltose as hexose          |            | mol/kg flour |
/// | `K_G`   | half saturation with hexose        | 0.004      | mol/kg flour |
/// | `K_M`   | half saturation with maltose       | 0.012      | mol/kg flour |
/// | `K_i`   | hexose that halves maltose use     | 0.03       | mol/kg flour |
/// | `κ`     | use of maltose, fitted             | 0.85 or 0.5 | –           |
/// | `S`     | supply                             |            | –            |
///
/// Valid for any amounts. Monod (1949) for the form; constants from memory.
///
/// ```
/// # use quantity::Amount;
/// # use science::ferment::{Organisms, Strain, uptake};
/// let yeast = Organisms::of(Strain::Bakers).sugars;
/// assert_eq!(uptake(Amount::moles(0.004), Amount::ZERO, &yeast).supply(), 0.5);
/// ```
#[must_use]
pub fn uptake(hexose: Amount, maltose: Amount, yeast: &SugarUse) -> Uptake {
    let held_back = yeast.repression / (yeast.repression + hexose);
    Uptake {
        hexose: hexose / (yeast.half_hexose + hexose),
        maltose: yeast.maltose_share * (maltose / (yeast.half_maltose + maltose)) * held_back,
    }
}
