//! A question asked backwards, answered: the figures with their grounds, what could not be met, and the formula as
//! it then is.

mod json;
mod markup;
mod text;

pub use json::json;
pub use markup::markup;
pub use text::text;
