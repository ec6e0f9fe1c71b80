//! How much an American label calls a serving.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Mass, Volume};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::serving",
    source: "fda-nlea-guide",
    place: "attachment 6; 21 CFR 101.9(b)",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.1, to: 10_000.0 }, Valid { symbol: "R", unit: "g", from: 0.1, to: 1000.0 }],
};

/// The entries of `data/customary_amounts.toml`, as text.
pub const DATA: &str = include_str!("../../data/customary_amounts.toml");

/// The kinds of food of that list, in its order.
pub const EATEN_AS: &[&str] = &[
    "muffins",
    "scones",
    "bread",
    "brownies",
    "heavy cake",
    "medium cake",
    "light cake",
    "coffee cake",
    "cookies",
    "pancakes",
    "waffles",
    "pie",
    "crackers",
    "jam",
    "syrup",
    "icing",
    "dessert topping",
];

/// What is customarily eaten at a time of a kind of food.
#[derive(Clone, Debug, PartialEq)]
pub struct Customary {
    /// The kind of food, one of [`EATEN_AS`].
    pub name: String,
    /// What falls under it.
    pub covers: String,
    /// The reference amount, by weight or by volume.
    pub amount: Amount,
    /// Where the figure comes from.
    pub origin: Origin,
}

/// A reference amount.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// By weight.
    Weight(Mass),
    /// By the label's spoons and cups: 15 ml a tablespoon.
    Room(Volume),
}

static AMOUNTS: LazyLock<Vec<Customary>> = LazyLock::new(|| {
    entry::read(DATA, "amount", |row| {
        let weight = row.number("gram").map(|gram| Amount::Weight(Mass::grams(gram)));
        let room = row.number("millilitre").map(|room| Amount::Room(Volume::millilitres(room)));
        Some(Customary { name: row.word("name")?, covers: row.word("covers")?, amount: weight.or(room)?, origin: row.origin()? })
    })
});

/// Every entry.
#[must_use]
pub fn all() -> &'static [Customary] {
    &AMOUNTS
}

/// The entry of a kind of food.
#[must_use]
pub fn of(name: &str) -> Option<&'static Customary> {
    AMOUNTS.iter().find(|one| one.name == name)
}

/// How many pieces are a serving.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pieces {
    /// So many.
    pub pieces: f64,
    /// Whether one piece may be called a serving as well.
    pub or_one: bool,
}

/// Returns how many pieces of a food are a serving.
///
/// ```text
/// m ≤ 50 % of R: as many as come nearest to R     > 50 % and < 67 %: two, or one     ≥ 67 %: one
/// ```
///
/// | symbol | meaning                        | unit |
/// |--------|--------------------------------|------|
/// | `m`    | what one piece weighs          | g    |
/// | `R`    | the reference amount           | g    |
///
/// From 200 % of the reference amount on, one piece is a serving only if one person can eat it at once. Of masses that
/// are not above nothing it answers one. Food and Drug Administration, guide to the Nutrition Labeling and Education
/// Act, attachment 6.
///
/// ```
/// # use quantity::Mass;
/// let cookies = science::nutrition::serving::pieces(Mass::grams(11.0), Mass::grams(30.0));
/// assert_eq!(cookies.pieces, 3.0);
/// ```
#[must_use]
pub fn pieces(piece: Mass, reference: Mass) -> Pieces {
    let share = super::printed::settled(piece / reference);
    match share {
        share if share > 0.0 && share <= 0.5 => Pieces { pieces: (1.0 / share).round(), or_one: false },
        share if share > 0.5 && share < 0.67 => Pieces { pieces: 2.0, or_one: true },
        _ => Pieces { pieces: 1.0, or_one: false },
    }
}

/// Returns how many servings a label says are in a pack: whole numbers, between two and five halves.
///
/// ```
/// assert_eq!(science::nutrition::serving::in_pack(3.6), 3.5);
/// ```
#[must_use]
pub fn in_pack(servings: f64) -> f64 {
    let step = if (2.0..=5.0).contains(&servings) { 0.5 } else { 1.0 };
    super::printed::to_step(servings, step)
}

/// Returns the gram or millilitres that a label prints for a serving: whole from five on, halves from two, tenths below.
///
/// ```
/// assert_eq!(science::nutrition::serving::metric(76.4).to_string(), "76");
/// ```
#[must_use]
pub fn metric(amount: f64) -> super::printed::Printed {
    let (step, decimals) = match amount {
        amount if amount >= 5.0 => (1.0, 0),
        amount if amount >= 2.0 => (0.5, 1),
        _ => (0.1, 1),
    };
    let printed = super::printed::amount(amount, step, decimals);
    // No ".0" behind a whole figure.
    if printed.value().fract() == 0.0 { super::printed::amount(amount, step, 0) } else { printed }
}
