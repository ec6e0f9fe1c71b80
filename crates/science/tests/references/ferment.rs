//! ferment against its references.

use crate::harness::{Case, Row, check};

mod vectors;

/// How each equation answers a point.
pub const CASES: &[Case] = &[];

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("ferment", CASES)
}

#[test]
fn every_reference_of_ferment_is_met() {
    rows();
}
