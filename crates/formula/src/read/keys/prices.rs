//! The keys of the prices' file.

use super::Value::{Date, Figure as Fig, Tables, Text};
use super::{Table, may, must};

/// What things cost, `prices.toml`.
pub static PRICES: Table = Table {
    title: "the prices",
    keys: &[
        may("electricity", Fig("an amount of money, such as \"0.32 EUR\""), "what a kilowatt-hour of electricity costs"),
        may("gas", Fig("an amount of money, such as \"0.12 EUR\""), "what a kilowatt-hour of gas costs"),
        may("hour", Fig("an amount of money, such as \"18 EUR\""), "what an hour of work costs"),
        may("packaging", Fig("an amount of money, such as \"0.12 EUR\""), "what a piece is packed in costs"),
        may("food-cost", Fig("a percentage, such as \"30 %\""), "the share of the price before tax that ingredients may take"),
        may("margin", Fig("a percentage, such as \"15 %\""), "the share of the price before tax that is left when all is paid"),
        may(
            "fees",
            Fig("a percentage, such as \"3 %\""),
            "the share of the price before tax that a stall, a shop or a card takes",
        ),
        may("unsold", Fig("a percentage, such as \"5 %\""), "the share of what is made that is not sold"),
        may("tax", Fig("a percentage, such as \"7 %\""), "the tax on top of the price, as your authority says for this food"),
        may("price", Tables(&PRICE), "what packs cost; of several of one ingredient the latest counts"),
    ],
};

/// What a pack costs.
pub static PRICE: Table = Table {
    title: "a price",
    keys: &[
        must("of", Text, "the ingredient"),
        must("pack", Fig("a weight, volume or count, such as \"1.5 kg\" or 10"), "how much is in a pack"),
        must("costs", Fig("an amount of money, such as \"1.35 EUR\""), "what the pack costs"),
        may("on", Date, "the day on which it cost that: 2026-10-01"),
        may(
            "edible",
            Fig("a percentage, such as \"75 %\""),
            "what is left after peel and trimming, where it is not as in the table",
        ),
        may("from", Text, "where it is bought"),
    ],
};
