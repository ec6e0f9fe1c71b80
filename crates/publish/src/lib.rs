//! What people see of a formula: the sheet, the page, the data behind it. Decides no number.

pub mod words;
pub mod method;
pub mod needs;
pub mod sheet;
pub mod page;
pub mod chart;
mod edition;
mod structured;

pub use edition::{edition, Edition};


pub use words::Units;
