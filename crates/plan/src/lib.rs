//! When things are done: how long a formula takes, and the day's timeline counted back from serving.

pub mod alternatives;
mod countdown;
pub mod day;
pub mod engine;
mod held;
mod hours;
pub mod problem;
pub mod relief;
mod used;

pub use countdown::{Counted, Expected, countdown, expected};
pub use hours::{Hours, Others, hands, hands_on, hours, lasts, others};
