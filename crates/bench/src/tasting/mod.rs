//! Blind tastings: how a table is laid, what a seat is asked, and what the answers say.
//!
//! Statistics are those of `science::sensory`; here they meet the samples, the seats and the codes.

mod advice;
mod asked;
mod choice;
mod finding;
mod lay;
mod notice;
mod order;
mod points;
mod sheet;
mod since;

pub use advice::{Advice, SPREAD, advise};
pub use asked::{Item, Wrong, asked, items, read};
pub use choice::{Alike, Choice};
pub use finding::{Finding, Findings, find};
pub use lay::{Cup, Seat, block, lay};
pub use notice::{Notice, notice};
pub use order::{Expected, Order, Pair};
pub use points::{PointPair, Points};
pub use science::sensory::discriminators::Discriminators;
pub use science::sensory::forced_choice::Test;
pub use science::sensory::hedonic::{Summary, WORDS as LIKING};
pub use sheet::{Sheet, Tasted};
pub use since::{Since, since};
