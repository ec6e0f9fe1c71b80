//! What is printed, put into words: data that a form of type is filled from.

mod card;
mod labels;
mod prep;
mod sheet;

pub use card::card;
pub use labels::{Meant, labels};
pub use prep::prep;
pub use sheet::sheet;

use crate::tongue::Tongue;
use formula::Step;

/// How long a step takes: "12–14 h", "3 min a side".
fn time(step: &Step, tongue: Tongue) -> Option<String> {
    let side = || step.side_time.map(|time| tongue.a_side(tongue.print.time(time)));
    step.time.map(|time| tongue.print.time(time)).or_else(side)
}
