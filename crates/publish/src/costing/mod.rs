//! What a formula costs and what to ask for it: every amount is rounded once, where it is told, and upwards.

mod json;
pub mod money;
mod paid;
mod text;

pub use json::json;
pub use text::text;

use bench::cost::{Cost, Paid, Sale, Then};

/// All that is told of a formula's cost.
#[derive(Debug)]
pub struct Costing<'f> {
    /// The formula's title.
    pub title: &'f str,
    /// The words for a piece.
    pub piece: &'f str,
    /// What it costs.
    pub cost: Cost,
    /// What to ask for it.
    pub sale: Option<Sale>,
    /// How the cost of its ingredients moved.
    pub history: Vec<Then>,
    /// What was paid for its ingredients over time; nothing where that was not asked.
    pub paid: Vec<Paid>,
}
