//! Can *Listeria monocytogenes* grow in a food eaten as it is? The European criteria.

use crate::{Equation, Standing, Valid};
use quantity::{Acidity, Fraction, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::listeria",
    source: "eu-2073-2005",
    place: "Annex I, chapter 1, footnote 8",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "a_w", unit: "–", from: 0.0, to: 1.0 },
        Valid { symbol: "pH", unit: "–", from: 0.0, to: 14.0 },
        Valid { symbol: "life", unit: "d", from: 0.0, to: 1000.0 },
    ],
};

/// What is known of a ready-to-eat food; leave out what was not measured.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ReadyToEat {
    /// Water activity.
    pub water_activity: Option<Fraction>,
    /// Sourness.
    pub sourness: Option<Acidity>,
    /// From making to the last day it is eaten.
    pub life: Option<TimeSpan>,
}

/// What the criteria say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// The food belongs to those that are taken not to support growth.
    NoGrowthExpected,
    /// Growth must be reckoned with unless shown otherwise.
    GrowthPossible,
    /// Too little is known.
    Unknown,
}

impl Verdict {
    /// The verdict as guidance; never a certificate.
    #[must_use]
    pub const fn guidance(self) -> &'static str {
        match self {
            Self::NoGrowthExpected => {
                "By the criteria Listeria is not expected to grow in it; the limit of 100 cfu/g stays. Check your local authority."
            }
            Self::GrowthPossible => {
                "By the criteria Listeria may grow in it: keep it cold and short. Check your local authority."
            }
            Self::Unknown => "Without pH, water activity or life the criteria give no verdict; keep it cold and short.",
        }
    }
}

/// Returns what the European criteria say of growth of *Listeria monocytogenes*.
///
/// ```text
/// no growth expected:  pH ≤ 4.4,  or a_w ≤ 0.92,  or (pH ≤ 5.0 and a_w ≤ 0.94),  or life < 5 days
/// ```
///
/// | symbol | meaning        | unit |
/// |--------|----------------|------|
/// | `a_w`  | water activity | –    |
/// | `pH`   | sourness       | –    |
/// | `life` | shelf life     | d    |
///
/// One criterion that is met is enough; growth is called possible only when all three are known and none is met. Regulation (EC) No 2073/2005, Annex I,
/// as laboratories restate it; the regulation was last amended by (EU) 2024/2895.
///
/// ```
/// # use quantity::Acidity;
/// use science::keeping::listeria::{ReadyToEat, Verdict, verdict};
/// let sour = ReadyToEat { sourness: Some(Acidity::ph(4.4)), ..ReadyToEat::default() };
/// assert_eq!(verdict(&sour), Verdict::NoGrowthExpected);
/// ```
#[must_use]
pub fn verdict(food: &ReadyToEat) -> Verdict {
    let a_w = food.water_activity.map(Fraction::as_ratio).filter(|value| !value.is_nan());
    let ph = food.sourness.map(Acidity::as_ph).filter(|value| !value.is_nan());
    let days = food.life.map(TimeSpan::as_days).filter(|value| !value.is_nan());
    let met = ph.is_some_and(|ph| ph <= 4.4)
        || a_w.is_some_and(|a_w| a_w <= 0.92)
        || (ph.is_some_and(|ph| ph <= 5.0) && a_w.is_some_and(|a_w| a_w <= 0.94))
        || days.is_some_and(|days| days < 5.0);
    match (met, ph, a_w, days) {
        (true, ..) => Verdict::NoGrowthExpected,
        (false, Some(_), Some(_), Some(_)) => Verdict::GrowthPossible,
        _ => Verdict::Unknown,
    }
}
