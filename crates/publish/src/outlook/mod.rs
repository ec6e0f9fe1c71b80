//! A forecast as a readable story, and for other programs.

mod json;
mod text;

pub use json::json;
pub(crate) use json::origin;
pub use text::text;
