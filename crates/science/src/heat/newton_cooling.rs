//! Cooling and warming of a covered bowl, a tin or a piece on a fridge shelf.

use crate::{Equation, Standing, Valid};
use quantity::{Area, HeatTransfer, Mass, SpecificHeat, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::newton_cooling",
    source: "incropera-2007",
    place: "§5.1, lumped capacitance",
    standing: Standing::Published,
    valid: &[Valid { symbol: "Bi", unit: "–", from: 0.0, to: 0.1 }],
};

/// A body that is equally warm throughout, and how it meets its surroundings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lump {
    /// Its mass.
    pub mass: Mass,
    /// Its specific heat.
    pub heat: SpecificHeat,
    /// The surface that meets the surroundings.
    pub surface: Area,
    /// How readily heat crosses it.
    pub transfer: HeatTransfer,
}

impl Lump {
    /// The time in which a difference to the surroundings falls to 1/e, about a third.
    #[must_use]
    pub fn time_constant(&self) -> TimeSpan {
        let capacity = self.mass.as_kilograms() * self.heat.as_joules_per_kilogram_kelvin();
        TimeSpan::seconds(capacity / (self.transfer.as_watts_per_square_metre_kelvin() * self.surface.as_square_metres()))
    }
}

/// Returns the temperature of a body after a while in surroundings of one temperature.
///
/// ```text
/// T = T_a + (T_0 − T_a)·exp(−t / τ),   τ = m·c / (h·A)
/// ```
///
/// | symbol | meaning                                | unit     |
/// |--------|----------------------------------------|----------|
/// | `T`    | temperature                            | °C       |
/// | `T_0`  | at the start                           | °C       |
/// | `T_a`  | of the surroundings                    | °C       |
/// | `t`    | time                                   | s        |
/// | `τ`    | time constant                          | s        |
/// | `m`, `c` | mass, specific heat                  | kg, J/(kg K) |
/// | `h`, `A` | heat transfer coefficient, surface   | W/(m² K), m² |
///
/// Exact while the body is equally warm throughout, which is so for h·(m/(ρ·A))/k ≤ 0.1; thick dough
/// keeps a warm heart longer than this says. Incropera and others (2007), §5.1.
///
/// ```
/// # use quantity::*;
/// # use science::heat::newton_cooling::{Lump, newton_cooling};
/// let bowl = Lump {
///     mass: Mass::kilograms(1.0),
///     heat: SpecificHeat::joules_per_kilogram_kelvin(3000.0),
///     surface: Area::square_centimetres(900.0),
///     transfer: HeatTransfer::watts_per_square_metre_kelvin(8.0),
/// };
/// let later = newton_cooling(&bowl, [Temperature::celsius(26.0), Temperature::celsius(4.0)], TimeSpan::hours(1.0));
/// assert_eq!(format!("{:.1} °C", later.as_celsius()), "13.3 °C");
/// ```
#[must_use]
pub fn newton_cooling(lump: &Lump, [start, surroundings]: [Temperature; 2], after: TimeSpan) -> Temperature {
    surroundings + (start - surroundings) * libm::exp(-(after / lump.time_constant()))
}

/// Returns the time until a body reaches a temperature; infinite or not a number if it never does.
#[must_use]
pub fn time_to_reach(lump: &Lump, [start, surroundings]: [Temperature; 2], goal: Temperature) -> TimeSpan {
    lump.time_constant() * libm::log((start - surroundings) / (goal - surroundings))
}
