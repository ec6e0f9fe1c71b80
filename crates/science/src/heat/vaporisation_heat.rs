//! Heat of vaporisation of water.

use super::saturation_pressure::{CRITICAL_KELVINS, pascals_per_kelvin};
use crate::{Equation, Standing, Valid};
use quantity::{Density, SpecificEnergy, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::vaporisation_heat",
    source: "iapws-sr1-86",
    place: "Eqs. (1) to (3), (6) and (7): both densities and the slope of the saturation line",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.01, to: 370.0 }],
};

const CRITICAL_DENSITY: f64 = 322.0;
const LIQUID: [(f64, f64); 6] = [
    (1.992_740_64, 1.0),
    (1.099_653_42, 2.0),
    (-0.510_839_303, 5.0),
    (-1.754_934_79, 16.0),
    (-45.517_035_2, 43.0),
    (-674_694.45, 110.0),
];
const VAPOUR: [(f64, f64); 6] = [
    (-2.031_502_40, 2.0),
    (-2.683_029_40, 4.0),
    (-5.386_264_92, 8.0),
    (-17.299_160_5, 18.0),
    (-44.758_658_1, 37.0),
    (-63.920_106_3, 71.0),
];

/// Returns the heat that vaporises water of this temperature at its saturation pressure.
///
/// ```text
/// L = T·(1/ρ″ − 1/ρ′)·dp/dT
/// ρ′/ρ_c = 1 + Σ b_i·τ^(n_i/3),   ln(ρ″/ρ_c) = Σ c_i·τ^(m_i/6),   τ = 1 − T/T_c
/// ```
///
/// | symbol    | meaning                         | value | unit  |
/// |-----------|---------------------------------|-------|-------|
/// | `L`       | heat of vaporisation            |       | J/kg  |
/// | `T`       | temperature                     |       | K     |
/// | `ρ′`, `ρ″` | densities of water and its vapour |     | kg/m³ |
/// | `dp/dT`   | slope of the saturation line    |       | Pa/K  |
/// | `ρ_c`     | critical density                | 322   | kg/m³ |
///
/// Clapeyron's equation, exact; densities and slope by IAPWS SR1-86(1992), valid from the triple
/// point to near the critical point. Above the critical point the answer is zero or meaningless.
///
/// ```
/// # use quantity::Temperature;
/// let heat = science::heat::vaporisation_heat(Temperature::celsius(100.0));
/// assert_eq!(format!("{:.0} kJ/kg", heat.as_kilojoules_per_kilogram()), "2257 kJ/kg");
/// ```
#[must_use]
pub fn vaporisation_heat(water: Temperature) -> SpecificEnergy {
    let [liquid, vapour] = saturated_densities(water).map(Density::as_kilograms_per_cubic_metre);
    let volume = 1.0 / vapour - 1.0 / liquid;
    SpecificEnergy::joules_per_kilogram(water.as_kelvins() * volume * pascals_per_kelvin(water))
}

/// Returns the densities of boiling water and of its steam, IAPWS SR1-86(1992), Eqs. (2) and (3).
#[must_use]
pub fn saturated_densities(water: Temperature) -> [Density; 2] {
    let tau = (1.0 - water.as_kelvins() / CRITICAL_KELVINS).max(0.0);
    let (third, sixth) = (libm::cbrt(tau), libm::sqrt(libm::cbrt(tau)));
    let liquid = 1.0 + LIQUID.iter().map(|(b, n)| b * libm::pow(third, *n)).sum::<f64>();
    let vapour = libm::exp(VAPOUR.iter().map(|(c, m)| c * libm::pow(sixth, *m)).sum());
    [liquid, vapour].map(|reduced| Density::kilograms_per_cubic_metre(CRITICAL_DENSITY * reduced))
}
