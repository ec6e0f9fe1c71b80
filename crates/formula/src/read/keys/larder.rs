//! The keys of the larder's file.

use super::Value::{Amounts, Date};
use super::{Table, must};

/// What is there already, `larder.toml`.
pub static LARDER: Table = Table {
    title: "the larder",
    keys: &[
        must("on", Date, "the day on which it was counted: 2026-11-25"),
        must(
            "holds",
            Amounts,
            "what is there, by ingredient: a weight, a volume or a number of pieces, with peel and shell where it has them",
        ),
    ],
};
