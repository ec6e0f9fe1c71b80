//! When things are done: how long a formula takes, and the day's timeline counted back from serving.

pub mod alternatives;
pub mod day;
pub mod engine;
mod held;
mod hours;
pub mod problem;
mod used;

pub use hours::{Hours, hands, hands_on, hours, lasts};
