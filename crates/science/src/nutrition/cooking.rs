//! What losing water in the oven does to figures per hundred grams.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::cooking",
    source: "eu-1169-2011",
    place: "Annex VIII, point 3; Commission Notice 2017/C 393/05",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g", from: 0.0, to: 1.0e7 }, Valid { symbol: "M", unit: "g", from: 1.0, to: 1.0e7 }],
};

/// Returns an ingredient's share of the finished food, which has lost water.
///
/// ```text
/// q = m / M
/// ```
///
/// | symbol | meaning                       | unit |
/// |--------|-------------------------------|------|
/// | `q`    | share of the finished food    | –    |
/// | `m`    | mass of the ingredient put in | g    |
/// | `M`    | mass of the finished food     | g    |
///
/// Valid for M above zero; at zero the share is infinite or not a number. Above 100 % a label says
/// "so many g per 100 g of finished product". Commission Notice 2017/C 393/05.
///
/// ```
/// # use quantity::Mass;
/// let sultanas = science::nutrition::cooking::share_of_finished(Mass::grams(200.0), Mass::grams(800.0));
/// assert_eq!(format!("{:.0} %", sultanas.as_percent()), "25 %");
/// ```
#[must_use]
pub fn share_of_finished(put_in: Mass, finished: Mass) -> Fraction {
    Fraction::ratio(put_in / finished)
}

/// Returns how much of the raw mass was lost: `(raw − finished) / raw`.
///
/// ```
/// # use quantity::Mass;
/// let loss = science::nutrition::cooking::loss(Mass::grams(1000.0), Mass::grams(870.0));
/// assert_eq!(format!("{:.0} %", loss.as_percent()), "13 %");
/// ```
#[must_use]
pub fn loss(raw: Mass, finished: Mass) -> Fraction {
    Fraction::ratio((raw - finished) / raw)
}

/// Returns the raw mass that leaves so much after a loss: `finished / (1 − loss)`.
///
/// ```
/// # use quantity::{Fraction, Mass};
/// let raw = science::nutrition::cooking::raw_for(Mass::pounds(500.0), Fraction::percent(13.0));
/// assert_eq!(format!("{:.1} lb", raw.as_pounds()), "574.7 lb");
/// ```
#[must_use]
pub fn raw_for(finished: Mass, loss: Fraction) -> Mass {
    finished / loss.left().as_ratio()
}
