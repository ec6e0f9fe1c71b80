//! What must be remembered from one day to the next: every revision of what a book says, what was
//! published, and what tasters answered.
//!
//! One contract, two databases: SQLite inside the book's folder, or a PostgreSQL server for a team, by the same
//! statements. Nothing that was saved is ever altered: a correction is a new revision, a new answer. Only a taster's wish removes
//! anything.

mod answer;
mod document;
mod edition;
mod fault;
mod gathered;
mod lines;
mod open;
mod record;
mod revision;
mod sitting;
mod stroke;
mod tables;

pub use answer::{Answer, Answering, Kept, Progress};
pub use document::{Kind, Saving};
pub use edition::Edition;
pub use fault::StoreFault;
pub use gathered::{FigureTold, PriceTold};
pub use open::{Address, Store};
pub use revision::{Revision, Saved, hash};
pub use sitting::{Cup, Laying, Seat, Sitting};
pub use stroke::{Making, Stroke};
