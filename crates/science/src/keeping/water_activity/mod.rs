//! Water activity: how much of the water in a food is free for what would grow in it.

pub mod ethanol;
pub mod mixture;
pub mod money_born;
pub mod norrish;
pub mod ross;
pub mod solute;
pub mod table_salt;

/// Molar mass of water, g/mol.
pub(crate) const WATER_MOLAR_MASS: f64 = 18.015;
