//! A trial as it is logged: what is expected beside what is to be noted, and what was noted with its corrections.

mod expected;
mod shown;

pub use expected::{Expected, Moment, Weight, expected};
pub use shown::{Change, Shown, is_same_figure};
