//! How yeast and sourdough raise a dough: the temperatures, sugars, salts and acids that speed or
//! slow them, the gas a dough holds, and one model that brings them together.

use crate::Equation;

mod acidity;
mod acidity_growth;
mod course;
mod culture_growth;
mod death;
mod dissolved_gas;
mod dose;
mod doubling_rule;
mod dough;
mod ethanol;
mod feed_rule;
mod fermentation;
mod gas_rate;
mod gas_volume;
mod lag;
mod leaven;
mod organisms;
mod osmotic_strength;
mod own_heat;
mod parameters;
mod rates;
mod ripeness;
mod salt_on_bacteria;
mod starch_release;
mod state;
mod temperature_path;
mod uptake;
mod vigour;
mod warmth;
mod yeast_growth;

pub use crate::measure::yeast::Form as YeastForm;
pub use crate::numeric::dormand_prince::{Ending, Limits};
pub use acidity::{Buffer, acidity};
pub use acidity_growth::{CardinalAcidity, acidity_growth};
pub use course::{Course, Moment};
pub use culture_growth::{CultureOrganism, culture_growth};
pub use death::{HeatDeath, death};
pub use dissolved_gas::dissolved_gas;
pub use dose::dose;
pub use doubling_rule::doubling_rule;
pub use dough::{Dough, DoughKind, Hold, Stage};
pub use ethanol::{ethanol, ethanol_share};
pub use feed_rule::feed_rule;
pub use fermentation::{Fermentation, LIMITS, PREFERMENTED, SOURDOUGH_TEMPERATURES};
pub use gas_rate::{SquareRootLaw, gas_rate};
pub use gas_volume::{Gas, gas_volume};
pub use lag::{adjusted_time, awake_share, lag_sleep};
pub use leaven::{Carried, Leaven, Yeast};
pub use organisms::{AcidMaking, Growth, Organisms, Strain};
pub use osmotic_strength::{Solutes, osmotic_share, osmotic_strength};
pub use own_heat::{OwnHeat, own_heat};
pub use parameters::{PARAMETERS, Parameter};
pub use ripeness::{Peak, Ripeness, Window};
pub use salt_on_bacteria::salt_on_bacteria;
pub use starch_release::{Release, starch_release};
pub use state::State;
pub use temperature_path::{Room, TemperaturePath, Warming};
pub use uptake::{SugarUse, Uptake, uptake};
pub use vigour::{Reading, Vigour, fitted_vigour, telling};
pub use yeast_growth::{Cardinal, yeast_growth};

/// The equations of this phenomenon: the model as a whole first, then what it is put together from.
pub const EQUATIONS: &[&Equation] = &[
    &fermentation::EQUATION,
    &gas_rate::EQUATION,
    &yeast_growth::EQUATION,
    &culture_growth::EQUATION,
    &acidity_growth::EQUATION,
    &osmotic_strength::EQUATION,
    &ethanol::EQUATION,
    &salt_on_bacteria::EQUATION,
    &uptake::EQUATION,
    &lag::EQUATION,
    &acidity::EQUATION,
    &starch_release::EQUATION,
    &dissolved_gas::EQUATION,
    &gas_volume::EQUATION,
    &own_heat::EQUATION,
    &death::EQUATION,
    &dough::EQUATION,
    &leaven::EQUATION,
    &ripeness::EQUATION,
    &doubling_rule::EQUATION,
    &feed_rule::EQUATION,
    &vigour::EQUATION,
    &dose::EQUATION,
];
