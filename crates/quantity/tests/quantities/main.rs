//! What people type, read as what they mean; what is printed, held against the standards that say how.
//!
//! Each table names its source beside it. What no standard settles is marked as common practice.

mod printing;
mod reading;
mod round_trips;
mod sizes;

use quantity::{Fault, Measure};

/// Reads a text, or gives up with the text in the message.
#[track_caller]
fn read(text: &str) -> Measure {
    text.parse().unwrap_or_else(|fault: Fault| panic!("{text:?} was refused: {fault}"))
}

/// Holds two figures to be the same to a relative difference.
#[track_caller]
fn near(found: f64, expected: f64, relative: f64, what: &str) {
    let off = (found - expected).abs();
    assert!(off <= relative * expected.abs().max(f64::MIN_POSITIVE), "{what}: {found}, expected {expected}");
}
