//! What people see of a formula: the sheet, the page, the data behind it. Decides no number.

pub mod chart;
pub mod comparison;
pub mod costing;
pub mod day;
mod edition;
pub mod exchanged;
pub mod label;
pub mod lessons;
pub mod logged;
pub mod method;
pub mod needs;
pub mod outlook;
pub mod page;
pub mod picture;
pub mod print;
pub mod reader;
mod serving;
pub mod sheet;
pub mod site;
pub mod solved;
pub mod spelling;
mod structured;
pub mod tasting;
pub mod tongue;
pub mod trial_plan;
pub mod words;

pub use edition::{book_files, is_own};

pub use words::Units;
