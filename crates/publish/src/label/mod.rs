//! Drafts of labels, in words, as data and as a sheet to print: the same sentences everywhere.

mod html;
mod json;
mod panel;
mod text;
pub(crate) mod words;

pub use html::html;
pub use json::json;
pub use text::text;
