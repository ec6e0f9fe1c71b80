//! Heat that moves through a body with time: finite volumes of enthalpy and water, one dimension.
//!
//! Everything here counts in plain SI numbers and degrees Celsius; the typed doors are
//! `heat::conduction`, `heat::freezing_front` and `heat::cook`.

mod body;
pub(super) mod crumb;
mod crumb_tables;
mod face;
mod grid;
pub(super) mod medium;

pub(super) use body::Body;
pub use crumb::Crust;
pub use face::{Face, Surroundings};
pub(super) use grid::Grid;
pub use grid::Shape;
