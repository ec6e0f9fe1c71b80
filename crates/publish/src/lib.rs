//! What people see of a formula: the sheet, the page, the data behind it. Decides no number.

pub mod chart;
pub mod comparison;
pub mod day;
mod edition;
pub mod exchanged;
pub mod lessons;
pub mod method;
pub mod needs;
pub mod outlook;
pub mod page;
pub mod print;
pub mod reader;
pub mod sheet;
pub mod solved;
mod structured;
pub mod trial_plan;
pub mod words;

pub use edition::{Edition, edition, picture_type};

pub use words::Units;
