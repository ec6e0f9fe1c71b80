//! Evaporation from an open pan below the boil.

use crate::heat::surface_evaporation::{Air, surface_evaporation};
use crate::heat::{saturation_pressure, vaporisation_heat};
use crate::{Equation, Standing, Valid};
use quantity::{Area, Between, Fraction, Mass, MassFlux, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::simmer",
    source: "ashrae-applications-pools",
    place: "evaporation from an open pool, still air, from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 30.0, to: 95.0 }, Valid { symbol: "a_w", unit: "–", from: 0.5, to: 1.0 }],
};

/// Heat carried by the vapour for each kilopascal in still air, W/(m² Pa).
const STILL_AIR: f64 = 0.089;

/// Returns how fast still water evaporates by the pool formula, the lower of two estimates.
///
/// ```text
/// m = 0.089 · (a_w·p_sat(T) − φ·p_sat(T_air)) / L
/// ```
///
/// | symbol  | meaning                        | unit      |
/// |---------|--------------------------------|-----------|
/// | `m`     | evaporation                    | kg/(m² s) |
/// | `a_w`   | water activity of the syrup    | –         |
/// | `p_sat` | saturation pressure            | kPa       |
/// | `φ`     | relative humidity of the room  | –         |
/// | `L`     | heat of vaporisation           | kJ/kg     |
///
/// Valid below the boil in a quiet room; at and above it [`super::boil_off`] takes over. Below zero where the
/// room is damper than the syrup. From memory of the handbook's pool formula.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::heat::surface_evaporation::Air;
/// let pool = science::sugar::simmer::pool(Temperature::celsius(80.0), Fraction::WHOLE, &Air::default());
/// assert_eq!(format!("{:.0} g/(min m²)", pool.as_grams_per_square_metre_minute()), "107 g/(min m²)");
/// ```
#[must_use]
pub fn pool(syrup: Temperature, water_activity: Fraction, air: &Air) -> MassFlux {
    let at_face = water_activity.as_ratio() * saturation_pressure(syrup).as_pascals();
    let in_air = air.humidity.as_ratio() * saturation_pressure(air.temperature).as_pascals();
    let latent = vaporisation_heat(syrup).as_joules_per_kilogram();
    MassFlux::kilograms_per_square_metre_second(STILL_AIR * (at_face - in_air) / latent)
}

/// An open pan of syrup.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pan {
    /// The syrup's free surface.
    pub surface: Area,
    /// How warm it is.
    pub syrup: Temperature,
    /// The syrup's water activity.
    pub water_activity: Fraction,
}

/// Returns the water that leaves an open pan: from the pool formula to the analogy of heat and mass.
///
/// The two differ by about two; weigh the pan once and keep the factor.
///
/// ```
/// # use quantity::{Area, Fraction, Temperature, TimeSpan};
/// # use science::heat::surface_evaporation::Air;
/// use science::sugar::simmer::{Pan, evaporated};
/// let pan = Pan { surface: Area::square_metres(0.04524), syrup: Temperature::celsius(80.0), water_activity: Fraction::WHOLE };
/// let lost = evaporated(&pan, TimeSpan::minutes(1.0), &Air::default());
/// assert_eq!(format!("{:.1} to {:.1} g", lost.from.as_grams(), lost.to.as_grams()), "4.8 to 9.0 g");
/// ```
#[must_use]
pub fn evaporated(pan: &Pan, time: TimeSpan, air: &Air) -> Between<Mass> {
    let lost = |flux: MassFlux| {
        let square_metre_seconds = pan.surface.as_square_metres() * time.as_seconds();
        Mass::kilograms(flux.as_kilograms_per_square_metre_second() * square_metre_seconds)
    };
    Between {
        from: lost(pool(pan.syrup, pan.water_activity, air)),
        to: lost(surface_evaporation(pan.syrup, pan.water_activity, air)),
    }
}
