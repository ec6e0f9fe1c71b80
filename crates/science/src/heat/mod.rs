//! Heat: what food is made of, how it mixes, warms, cooks and cools.
//!
//! Composition gives properties ([`Composition`], [`mixture_conductivity()`]); a balance gives the dough's
//! temperature ([`mixing_temperature()`], [`liquid_temperature()`], beside them the trade's [`factor_rule()`]);
//! a lump cools by [`newton_cooling()`]; a piece cooks by [`cook()`], whose stages come from [`griddle`], whose
//! coefficients from [`surroundings`], and whose course of temperatures goes to [`starch_setting()`],
//! [`browning()`] and to whoever judges safety. [`griddle::foresee`] gives a range instead of a figure and
//! [`probe`] fits the contact to one reading.

pub mod air_pressure;
pub mod boiling_point;
pub mod browning;
pub mod butter_warming;
pub mod component;
pub mod component_conductivity;
pub mod component_density;
pub mod component_heat_capacity;
pub mod conduction;
pub mod contact_temperature;
pub mod cook;
pub mod cooking_time_bound;
pub mod course;
pub mod crust_lightness;
pub mod crust_thickness;
pub mod diffusivity;
pub mod equal_radius;
pub mod factor_rule;
pub mod flour_water_activity;
pub mod freezing_front;
pub mod griddle;
pub mod ice_fraction;
pub mod ingredient_heats;
pub mod landmarks;
pub mod liquid_temperature;
pub mod mixing_temperature;
pub mod mixture_conductivity;
pub mod mixture_density;
pub mod mixture_heat_capacity;
pub mod newton_cooling;
pub mod pore_vapour_conductivity;
pub mod porous_conductivity;
pub mod probe;
pub mod radiative_transfer;
pub mod saturation_pressure;
pub mod solid_fat;
pub mod starch_setting;
pub mod surface_evaporation;
pub mod surroundings;
mod transient;
pub mod vaporisation_heat;

pub use air_pressure::air_pressure;
pub use boiling_point::boiling_point;
pub use browning::browning;
pub use butter_warming::butter_warming;
pub use component::{Component, Composition};
pub use component_conductivity::component_conductivity;
pub use component_density::component_density;
pub use component_heat_capacity::{WaterConstant, component_heat_capacity};
pub use conduction::conduction;
pub use contact_temperature::contact_temperature;
pub use cook::cook;
pub use cooking_time_bound::cooking_time_bound;
pub use crust_lightness::crust_lightness;
pub use crust_thickness::crust_thickness;
pub use diffusivity::diffusivity;
pub use factor_rule::factor_rule;
pub use flour_water_activity::flour_water_activity;
pub use freezing_front::freezing_front;
pub use ice_fraction::ice_fraction;
pub use liquid_temperature::liquid_temperature;
pub use mixing_temperature::mixing_temperature;
pub use mixture_conductivity::{Arrangement, mixture_conductivity};
pub use mixture_density::mixture_density;
pub use mixture_heat_capacity::mixture_heat_capacity;
pub use newton_cooling::newton_cooling;
pub use pore_vapour_conductivity::pore_vapour_conductivity;
pub use porous_conductivity::porous_conductivity;
pub use radiative_transfer::radiative_transfer;
pub use saturation_pressure::saturation_pressure;
pub use solid_fat::solid_fat;
pub use starch_setting::starch_setting;
pub use surface_evaporation::surface_evaporation;
pub use transient::{Crust, Face, Shape, Surroundings};
pub use vaporisation_heat::vaporisation_heat;

use crate::Equation;

/// The equations of this phenomenon.
pub const EQUATIONS: &[&Equation] = &[
    &component_density::EQUATION,
    &component_heat_capacity::EQUATION,
    &component_conductivity::EQUATION,
    &mixture_density::EQUATION,
    &mixture_heat_capacity::EQUATION,
    &mixture_conductivity::EQUATION,
    &porous_conductivity::EQUATION,
    &diffusivity::EQUATION,
    &ice_fraction::EQUATION,
    &saturation_pressure::EQUATION,
    &vaporisation_heat::EQUATION,
    &air_pressure::EQUATION,
    &boiling_point::EQUATION,
    &equal_radius::EQUATION,
    &flour_water_activity::EQUATION,
    &pore_vapour_conductivity::EQUATION,
    &radiative_transfer::EQUATION,
    &surface_evaporation::EQUATION,
    &conduction::EQUATION,
    &freezing_front::EQUATION,
    &cook::EQUATION,
    &browning::EQUATION,
    &contact_temperature::EQUATION,
    &cooking_time_bound::EQUATION,
    &crust_lightness::EQUATION,
    &crust_thickness::EQUATION,
    &factor_rule::EQUATION,
    &liquid_temperature::EQUATION,
    &mixing_temperature::EQUATION,
    &newton_cooling::EQUATION,
    &solid_fat::EQUATION,
    &butter_warming::EQUATION,
    &starch_setting::EQUATION,
];
