//! How many must taste to see a difference of a given size.

use quantity::Fraction;
use science::sensory::forced_choice::{Test, fewest};
use science::sensory::panel_size::{power, smallest};
use science::sensory::serving_order::TRIANGLE;

/// What is asked of the tasters, and how surely it should be answered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Question {
    /// How it is put.
    pub test: Test,
    /// The difference worth seeing: the share of people who truly tell it.
    pub tell: Fraction,
    /// How often a difference may be found that is none.
    pub significance: Fraction,
    /// How often a true difference of that size should be found.
    pub power: Fraction,
}

/// The panel for a question.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Panel {
    /// The fewest tasters, one answer each.
    pub fewest: u32,
    /// So many that every serving order is used equally often.
    pub tasters: u32,
    /// The fewest right answers, or answers for the winner, that are then evidence.
    pub right: u32,
    /// How often that panel finds such a difference.
    pub power: Fraction,
}

/// Returns the panel for a question, or nothing where two thousand tasters would not do.
#[must_use]
pub fn panel(question: &Question) -> Option<Panel> {
    let Question { test, tell, significance, power: wanted } = *question;
    let least = smallest(test, tell, significance, wanted)?;
    let orders = match test {
        Test::Triangle => TRIANGLE.len() as u32,
        // Either sample first; the reference of a duo-trio may be either, too.
        Test::DuoTrio => 4,
        Test::PairedDirected | Test::PairedPreference => 2,
    };
    // The power is saw-toothed in the panel's size: a rounder panel may find less, and a larger one is then taken.
    let rounder = (least.div_ceil(orders)..).map(|rounds| rounds * orders);
    let tasters = rounder.take(50).find(|tasters| power(test, *tasters, tell, significance) >= wanted)?;
    Some(Panel {
        fewest: least,
        tasters,
        right: fewest(test, tasters, significance)?,
        power: power(test, tasters, tell, significance),
    })
}
