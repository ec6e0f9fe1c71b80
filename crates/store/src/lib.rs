//! What must be remembered from one day to the next: every revision of what a book says, and what was published.
//!
//! One contract, two databases: SQLite inside the book's folder, or a PostgreSQL server for a team, by the same
//! statements. Nothing that was saved is ever altered: a correction is a new revision.

mod document;
mod edition;
mod fault;
mod open;
mod record;
mod revision;
mod stroke;
mod tables;

pub use document::{Kind, Saving};
pub use edition::Edition;
pub use fault::StoreFault;
pub use open::{Address, Store};
pub use revision::{Revision, Saved, hash};
pub use stroke::{Making, Stroke};
