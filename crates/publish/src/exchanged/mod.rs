//! A formula after an exchange: what changed, in the trade's terms.

mod json;
mod text;

pub use json::json;
pub use text::{changes, text};
