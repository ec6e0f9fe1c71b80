//! What people see of a formula: the sheet, the page, the data behind it. Decides no number.

pub mod chart;
mod edition;
pub mod method;
pub mod needs;
pub mod page;
pub mod sheet;
mod structured;
pub mod words;

pub use edition::{Edition, edition};

pub use words::Units;
