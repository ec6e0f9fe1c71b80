//! Boiling a syrup down: how much water must go, and how long a hob takes for it.

use crate::heat;
use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction, Heat, Mass, Power, Pressure, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::boil_off",
    source: "iapws-sr1-86",
    place: "heat of vaporisation; mass balance of the sugar",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "power", unit: "W", from: 100.0, to: 10_000.0 },
        Valid { symbol: "P", unit: "kPa", from: 50.0, to: 110.0 },
    ],
};

/// How a hob heats, and by it how much of its power arrives in the pan. From memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hob {
    /// Gas flame: 35 to 45 %.
    Gas,
    /// Radiant or solid plate: 65 to 75 %.
    Plate,
    /// Induction: 80 to 90 %.
    Induction,
}

impl Hob {
    /// The share of the power that arrives.
    #[must_use]
    pub const fn efficiency(self) -> Between<Fraction> {
        let (from, to) = match self {
            Self::Gas => (35.0, 45.0),
            Self::Plate => (65.0, 75.0),
            Self::Induction => (80.0, 90.0),
        };
        Between { from: Fraction::percent(from), to: Fraction::percent(to) }
    }
}

/// Returns the water to boil off to bring a syrup from one strength to another; below zero it is to be added.
///
/// ```text
/// m_w = m · (1 − w_0/w_1)
/// ```
///
/// | symbol | meaning              | unit |
/// |--------|----------------------|------|
/// | `m_w`  | water to boil off    | g    |
/// | `m`    | syrup                | g    |
/// | `w_0`  | sugar in it          | –    |
/// | `w_1`  | sugar wanted         | –    |
///
/// Exact; to no sugar at all it has no finite answer.
///
/// ```
/// # use quantity::{Fraction, Mass};
/// let percent = Fraction::percent;
/// let water = science::sugar::boil_off::water(Mass::grams(1000.0), percent(40.0), percent(65.0));
/// assert_eq!(format!("{:.1} g", water.as_grams()), "384.6 g");
/// ```
#[must_use]
pub fn water(syrup: Mass, has: Fraction, wanted: Fraction) -> Mass {
    syrup * (1.0 - has / wanted)
}

/// Returns the heat that boils off a mass of water at an air pressure: `m · L`.
///
/// ```
/// # use quantity::{Mass, Pressure};
/// let heat = science::sugar::boil_off::heat_for(Mass::grams(384.6), Pressure::pascals(101_325.0));
/// assert_eq!(format!("{:.0} kJ", heat.as_kilojoules()), "868 kJ");
/// ```
#[must_use]
pub fn heat_for(water: Mass, air: Pressure) -> Heat {
    let latent = heat::vaporisation_heat(heat::boiling_point(air));
    Heat::joules(water.as_kilograms() * latent.as_joules_per_kilogram())
}

/// Returns how long a power that arrives in the pan takes to boil off a mass of water; what the pan loses to
/// the room is to be taken off the power first.
///
/// ```
/// # use quantity::{Mass, Power, Pressure};
/// let time = science::sugar::boil_off::time(Mass::grams(384.6), Power::kilowatts(1.0), Pressure::pascals(101_325.0));
/// assert_eq!(format!("{:.1} min", time.as_minutes()), "14.5 min");
/// ```
#[must_use]
pub fn time(water: Mass, arriving: Power, air: Pressure) -> TimeSpan {
    TimeSpan::seconds(heat_for(water, air).as_joules() / arriving.as_watts())
}

/// Returns the water that a power boils off in a time.
///
/// ```
/// # use quantity::{Power, Pressure, TimeSpan};
/// use science::sugar::boil_off::boiled;
/// let water = boiled(Power::kilowatts(1.0), TimeSpan::minutes(1.0), Pressure::pascals(101_325.0));
/// assert_eq!(format!("{:.1} g", water.as_grams()), "26.6 g");
/// ```
#[must_use]
pub fn boiled(arriving: Power, time: TimeSpan, air: Pressure) -> Mass {
    let latent = heat::vaporisation_heat(heat::boiling_point(air));
    Mass::kilograms(arriving.as_watts() * time.as_seconds() / latent.as_joules_per_kilogram())
}
