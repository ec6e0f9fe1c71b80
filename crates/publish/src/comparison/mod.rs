//! Formulas side by side, for the terminal and for other programs.

mod json;
mod text;

pub use json::json;
pub use text::{heading, table, text};
