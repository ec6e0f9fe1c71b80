//! The document: from the text of a book to formulas in grams, and what is wrong on the way.
//!
//! `read` turns text into drafts, `resolve` turns drafts into formulas, `arithmetic` works a
//! formula out the baker's way. Every stage returns a value and diagnostics with their place.

pub mod arithmetic;
pub mod book;
pub mod diagnostic;
pub mod fault;
pub mod import;
pub mod ingredient;
pub mod known;
pub mod larder;
pub mod logging;
pub mod prices;
pub mod read;
pub mod resolve;
pub mod source;
mod tastings;
mod translations;
mod trials;

pub use book::{Book, BookText};
pub use diagnostic::{Checked, Diagnostic, Edit, Fix, Place, Severity};
pub use ingredient::{Ingredient, Pantry};
pub use known::{Known, Origin};
pub use resolve::formula::{Component, Content, Formula, Line, Stage, Step, Yield};
