//! A forecast as a readable story, and for other programs.

mod json;
mod text;

pub use json::json;
pub use text::text;
