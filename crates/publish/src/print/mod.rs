//! What is printed, put into words: data that a form of type is filled from.

mod card;
mod labels;
mod prep;
mod sheet;

pub use card::card;
pub use labels::{Meant, labels};
pub use prep::prep;
pub use sheet::sheet;

use formula::Step;
use quantity::print;

/// How long a step takes: "12–14 h", "3 min a side".
fn time(step: &Step) -> Option<String> {
    let side = || step.side_time.map(|time| format!("{} a side", print::time(time)));
    step.time.map(print::time).or_else(side)
}
