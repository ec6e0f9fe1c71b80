//! Alcohol of a mix, by mass and by volume.

use super::alcohol_strength;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass, Temperature, Volume};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::alcohol_mix",
    source: "oiml-r22",
    place: "mass balance with the general formula",
    standing: Standing::Published,
    valid: &[Valid { symbol: "V", unit: "ml", from: 0.0, to: 1.0e7 }, Valid { symbol: "q", unit: "% vol", from: 0.0, to: 100.0 }],
};

/// From this share on a food is shown as "contains alcohol, not for children or in pregnancy"; our own threshold.
pub const WORTH_A_WARNING: Fraction = Fraction::percent(0.5);

/// A poured drink.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Poured {
    /// How much, at 20 °C.
    pub volume: Volume,
    /// Its strength by volume.
    pub strength: Fraction,
}

/// Returns the mass of a poured drink: `V · ρ(q)`.
///
/// ```
/// # use quantity::{Fraction, Volume};
/// use science::keeping::alcohol_mix::{Poured, mass};
/// let brandy = Poured { volume: Volume::millilitres(60.0), strength: Fraction::percent(40.0) };
/// assert_eq!(format!("{:.2} g", mass(brandy).as_grams()), "56.88 g");
/// ```
#[must_use]
pub fn mass(drink: Poured) -> Mass {
    drink.volume * alcohol_strength::density(alcohol_strength::by_mass(drink.strength), Temperature::celsius(20.0))
}

/// Returns the ethanol in a poured drink.
///
/// ```text
/// m = V · q · ρ(1)
/// ```
///
/// | symbol | meaning                   | value  | unit |
/// |--------|---------------------------|--------|------|
/// | `m`    | ethanol                   |        | g    |
/// | `V`    | volume at 20 °C           |        | ml   |
/// | `q`    | strength by volume        |        | –    |
/// | `ρ(1)` | density of pure ethanol   | 0.78924 | g/ml |
///
/// Linear everywhere. By the definition of strength by volume.
///
/// ```
/// # use quantity::{Fraction, Volume};
/// use science::keeping::alcohol_mix::{Poured, ethanol};
/// let brandy = Poured { volume: Volume::millilitres(60.0), strength: Fraction::percent(40.0) };
/// assert_eq!(format!("{:.2} g", ethanol(brandy).as_grams()), "18.94 g");
/// ```
#[must_use]
pub fn ethanol(drink: Poured) -> Mass {
    drink.volume * alcohol_strength::pure() * drink.strength
}

/// Returns the strength by volume of drinks poured together with water, which contracts.
///
/// For a drink only: a solid food has no strength by volume, state grams and the share by mass instead.
///
/// ```
/// # use quantity::{Fraction, Mass, Volume};
/// use science::keeping::alcohol_mix::{Poured, strength};
/// let rum = Poured { volume: Volume::millilitres(100.0), strength: Fraction::percent(40.0) };
/// let diluted = strength(&[rum], Mass::grams(100.0));
/// assert_eq!(format!("{:.1} % vol", diluted.as_percent()), "20.0 % vol");
/// ```
#[must_use]
pub fn strength(drinks: &[Poured], water: Mass) -> Fraction {
    let alcohol: Mass = drinks.iter().map(|drink| ethanol(*drink)).sum();
    let whole = drinks.iter().map(|drink| mass(*drink)).sum::<Mass>() + water;
    alcohol_strength::by_volume(Fraction::ratio(alcohol / whole))
}
