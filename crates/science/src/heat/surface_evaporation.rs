//! Evaporation from a wet face into air, below boiling.

use super::air_pressure::SEA_LEVEL;
use super::saturation_pressure;
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, HeatTransfer, MassFlux, Pressure, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::surface_evaporation",
    source: "bird-stewart-lightfoot-2002",
    place: "analogy of heat and mass transfer with Stefan flow, form from memory",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "T_s", unit: "°C", from: 0.0, to: 98.0 },
        Valid { symbol: "h", unit: "W/(m² K)", from: 1.0, to: 100.0 },
    ],
};

/// The gas constant of water vapour in J/(kg K).
const VAPOUR_CONSTANT: f64 = 461.5;
/// The gas constant of air in J/(kg K).
const AIR_CONSTANT: f64 = 287.0;
/// The specific heat of air in J/(kg K).
const AIR_HEAT: f64 = 1007.0;
/// The largest share of the pressure that vapour at the face may take, short of boiling.
pub(super) const MOST_VAPOUR: f64 = 0.97;

/// The air over a wet face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Its temperature.
    pub temperature: Temperature,
    /// Its relative humidity.
    pub humidity: Fraction,
    /// The heat transfer coefficient by convection alone.
    pub convection: HeatTransfer,
    /// The total pressure.
    pub pressure: Pressure,
}

impl Default for Air {
    /// A quiet kitchen: 22 °C, half saturated, at sea level (common practice, no source).
    fn default() -> Self {
        Self {
            temperature: Temperature::celsius(22.0),
            humidity: Fraction::percent(50.0),
            convection: HeatTransfer::watts_per_square_metre_kelvin(8.0),
            pressure: SEA_LEVEL,
        }
    }
}

/// Returns the water that leaves a wet face.
///
/// ```text
/// m = h / c_p·(R_a/R_v)·Le^(−2/3)·(p_s − p_a) / (P − (p_s + p_a)/2)
/// p_s = a_w·p_sat(T_s),   p_a = φ·p_sat(T_a)
/// ```
///
/// | symbol | meaning                              | value | unit       |
/// |--------|--------------------------------------|-------|------------|
/// | `m`    | evaporation, negative for condensation |     | kg/(m² s)  |
/// | `h`    | heat transfer coefficient            |       | W/(m² K)   |
/// | `c_p`  | specific heat of air                 | 1007  | J/(kg K)   |
/// | `Le`   | Lewis number                         | 0.85  | –          |
/// | `R_v`, `R_a` | gas constants of vapour and air | 461.5, 287 | J/(kg K) |
/// | `a_w`  | water activity of the face           |       | –          |
/// | `φ`    | relative humidity                    |       | –          |
/// | `P`    | pressure                             |       | Pa         |
///
/// Valid below boiling; the vapour's share of the pressure is held at 97 %, above which boiling takes
/// over. The film's temperature falls out, as both densities are those of ideal gases. The analogy of Chilton and Colburn with Stefan's flow, constants from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::heat::surface_evaporation::{Air, surface_evaporation};
/// let pan = surface_evaporation(Temperature::celsius(80.0), Fraction::WHOLE, &Air::default());
/// assert_eq!(format!("{:.0} g/(min m²)", pan.as_grams_per_square_metre_minute()), "198 g/(min m²)");
/// ```
#[must_use]
pub fn surface_evaporation(face: Temperature, water_activity: Fraction, air: &Air) -> MassFlux {
    let p = air.pressure.as_pascals();
    let at_face = (water_activity.as_ratio() * saturation_pressure(face).as_pascals()).min(MOST_VAPOUR * p);
    let in_air = air.humidity.as_ratio() * saturation_pressure(air.temperature).as_pascals();
    let h = air.convection.as_watts_per_square_metre_kelvin();
    MassFlux::kilograms_per_square_metre_second(flux(h, p, [at_face, in_air]))
}

/// The same in plain numbers, for the inner loop of a cook.
pub(super) fn flux(h: f64, p: f64, [at_face, in_air]: [f64; 2]) -> f64 {
    let transfer = h / AIR_HEAT * (AIR_CONSTANT / VAPOUR_CONSTANT) * LEWIS_FACTOR;
    transfer * (at_face - in_air) / (p - f64::midpoint(at_face, in_air))
}

/// `Le^(−2/3)` for a Lewis number of 0.85, water vapour in air.
const LEWIS_FACTOR: f64 = 1.114_433_220_2;

#[test]
fn the_lewis_factor_is_the_power_it_stands_for() {
    assert!((LEWIS_FACTOR - libm::pow(0.85, -2.0 / 3.0)).abs() < 1e-7);
}
