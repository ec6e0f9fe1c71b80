//! What stays behind in a strainer, and what comes through.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::strainer",
    source: "mass-balance",
    place: "balance of insoluble solids; solids of a wet cake 15 to 25 %, common practice",
    standing: Standing::CommonPractice,
    valid: &[Valid { symbol: "s", unit: "%", from: 10.0, to: 40.0 }],
};

/// The usual share of solids in the wet cake.
pub const USUAL_CAKE: Fraction = Fraction::percent(20.0);

/// Cooked fruit in its syrup.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stewed {
    /// Water, the fruit's own included.
    pub water: Mass,
    /// Sugars and all else that dissolves.
    pub soluble: Mass,
    /// Skin, fibre, pips.
    pub insoluble: Mass,
}

/// What a strainer makes of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strained {
    /// What comes through.
    pub syrup: Mass,
    /// Its dissolved share, its Brix.
    pub brix: Fraction,
    /// The wet cake that stays.
    pub cake: Mass,
    /// The syrup lost in the cake.
    pub lost: Mass,
    /// The share of the liquid that comes through.
    pub yields: Fraction,
}

/// Returns what comes through a strainer that holds back all insoluble solids in a wet cake.
///
/// ```text
/// cake = insoluble / s      lost = cake − insoluble      Brix = soluble/(soluble + water)
/// ```
///
/// | symbol | meaning                         | unit |
/// |--------|---------------------------------|------|
/// | `s`    | solids in the wet cake          | –    |
///
/// The share of solids in the cake is common practice, 15 to 25 %: weigh your own once. With less liquid than
/// the cake would hold, what comes through falls below zero and says so.
///
/// ```
/// # use quantity::Mass;
/// use science::sugar::strainer::{Stewed, USUAL_CAKE, strain};
/// let fruit = Stewed { water: Mass::grams(331.0), soluble: Mass::grams(359.0), insoluble: Mass::grams(10.0) };
/// let through = strain(&fruit, USUAL_CAKE);
/// assert_eq!(format!("{:.1} % at {:.1} °Bx", through.yields.as_percent(), through.brix.as_percent()), "94.2 % at 52.0 °Bx");
/// ```
#[must_use]
pub fn strain(stewed: &Stewed, cake_solids: Fraction) -> Strained {
    let liquid = stewed.water + stewed.soluble;
    let cake = stewed.insoluble / cake_solids.as_ratio();
    let lost = cake - stewed.insoluble;
    let syrup = liquid - lost;
    Strained { syrup, brix: Fraction::ratio(stewed.soluble / liquid), cake, lost, yields: Fraction::ratio(syrup / liquid) }
}

/// Returns the Brix after boiling off water from a syrup.
///
/// ```
/// # use quantity::{Fraction, Mass};
/// let brix = science::sugar::strainer::after_boiling(Mass::grams(690.0), Fraction::percent(52.03), Mass::grams(60.0));
/// assert_eq!(format!("{:.1} °Bx", brix.as_percent()), "57.0 °Bx");
/// ```
#[must_use]
pub fn after_boiling(syrup: Mass, brix: Fraction, boiled_off: Mass) -> Fraction {
    Fraction::ratio(brix.as_ratio() * (syrup / (syrup - boiled_off)))
}
