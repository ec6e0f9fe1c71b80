//! Conductivity of moist pores: water evaporates on the hot side of a bubble and condenses on the cold side.

use super::porous_conductivity::DRY_AIR;
use super::{saturation_pressure, vaporisation_heat};
use crate::{Equation, Standing, Valid};
use quantity::{Conductivity, Fraction, Pressure, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::pore_vapour_conductivity",
    source: "de-vries-1989",
    place: "evaporation and condensation in the gas cells of dough, after Krischer; form and diffusion coefficient from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.0, to: 98.0 }, Valid { symbol: "ω", unit: "–", from: 0.0, to: 1.0 }],
};

/// The gas constant in J/(mol K).
const GAS_CONSTANT: f64 = 8.314_462;
/// The molar mass of water in kg/mol.
const WATER_MOLAR_MASS: f64 = 0.018_015;

/// Returns the diffusion coefficient of water vapour in air, in m²/s.
fn vapour_diffusion(kelvins: f64) -> f64 {
    2.2e-5 * libm::pow(kelvins / 273.15, 1.81)
}

/// The vapour term of fully saturated pores per unit of `P / (P − p_v)`, in W/(m K).
pub(super) fn saturated_term(t: Temperature) -> f64 {
    let kelvins = t.as_kelvins();
    let molar_heat = vaporisation_heat(t).as_joules_per_kilogram() * WATER_MOLAR_MASS / (GAS_CONSTANT * kelvins);
    vapour_diffusion(kelvins) * molar_heat * saturation_pressure(t).as_pascals() * molar_heat / kelvins
}

/// The part of the pressure that air keeps even in pores near boiling, so that the term stays finite.
pub(super) const AIR_LEFT: f64 = 0.02;

/// Returns the conductivity of the gas in moist pores.
///
/// ```text
/// k_d = k_air + ω·D_v·(L·M / (R·T))·(dp_v/dT)·P / (P − p_v)
/// dp_v/dT = p_v·L·M / (R·T²),   p_v = a_w·p_sat,   D_v = 2.2e-5·(T / 273.15)^1.81
/// ```
///
/// | symbol  | meaning                                   | value    | unit       |
/// |---------|-------------------------------------------|----------|------------|
/// | `k_d`   | conductivity of the pore's gas            |          | W/(m K)    |
/// | `k_air` | of dry air                                | 0.028    | W/(m K)    |
/// | `ω`     | how far the bubbles keep saturated        |          | –          |
/// | `D_v`   | diffusion coefficient of vapour in air    |          | m²/s       |
/// | `L`     | heat of vaporisation                      |          | J/kg       |
/// | `M`     | molar mass of water                       | 0.018015 | kg/mol     |
/// | `R`     | gas constant                              | 8.314462 | J/(mol K)  |
/// | `P`     | pressure                                  |          | Pa         |
/// | `a_w`   | water activity                            |          | –          |
///
/// Valid below boiling; near it the air's share of the pressure is held at 2 %, lest the term grow
/// without bound. ω lies between 0, pure conduction, and 1. de Vries et al. (1989), from memory.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::heat::air_pressure::SEA_LEVEL;
/// # use science::heat::pore_vapour_conductivity::{Pores, pore_vapour_conductivity};
/// let pores = Pores { water_activity: Fraction::WHOLE, saturation: Fraction::percent(50.0), pressure: SEA_LEVEL };
/// let warm = pore_vapour_conductivity(&pores, Temperature::celsius(60.0));
/// assert_eq!(format!("{:.2}", warm.as_watts_per_metre_kelvin()), "0.30");
/// ```
#[must_use]
pub fn pore_vapour_conductivity(pores: &Pores, temperature: Temperature) -> Conductivity {
    let (a_w, p) = (pores.water_activity.as_ratio(), pores.pressure.as_pascals());
    let vapour = a_w * saturation_pressure(temperature).as_pascals();
    let share = p / (p - vapour).max(AIR_LEFT * p);
    DRY_AIR + Conductivity::watts_per_metre_kelvin(pores.saturation.as_ratio() * a_w * saturated_term(temperature) * share)
}

/// The state of the gas in a crumb's pores.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pores {
    /// Water activity of the walls.
    pub water_activity: Fraction,
    /// How far the bubbles keep saturated while vapour crosses them, ω.
    pub saturation: Fraction,
    /// The total pressure.
    pub pressure: Pressure,
}
