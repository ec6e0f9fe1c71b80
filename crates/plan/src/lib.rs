//! When things are done: how long a formula takes, and the day's timeline counted back from serving.

pub mod engine;
mod hours;
mod used;
pub mod problem;

pub use hours::{Hours, hands_on, hours, lasts};
