//! A formula after an exchange: what changed, in the trade's terms.

mod json;
mod markup;
mod text;

pub use json::json;
pub use markup::{changes as changes_markup, list, markup};
pub use text::{changes, text};
