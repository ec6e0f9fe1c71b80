//! Formulas side by side, for the terminal and for other programs.

mod changes;
mod course;
mod json;
mod markup;
mod text;

pub use changes::changes;
pub use course::courses;
pub use json::json;
pub use markup::markup;
pub use text::{heading, table, text};
