//! How sour a dough is with that much acid in it.

use crate::numeric::exponential::exp;
use crate::{Equation, Standing, Valid};
use quantity::{Acidity, Amount};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::acidity",
    source: "pmc6950244",
    place: "acids and pH of wheat sourdough at 4 h, mature and 24 h; the law is fitted to them",
    standing: Standing::Fitted,
    valid: &[Valid { symbol: "A", unit: "mmol/kg flour", from: 0.0, to: 200.0 }],
};

/// How a dough answers acid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Buffer {
    /// Before any acid.
    pub start: Acidity,
    /// However much acid.
    pub end: Acidity,
    /// The acid that covers all but 1/e of the way, a kg flour.
    pub scale: Amount,
}

/// Returns the pH of a dough with that much lactic and acetic acid a kg flour.
///
/// ```text
/// pH = pH_x + (pH_0 − pH_x)·exp(−A/B)
/// ```
///
/// | symbol | meaning                                 | value | unit          |
/// |--------|-----------------------------------------|-------|---------------|
/// | `A`    | lactic and acetic acid                  |       | mmol/kg flour |
/// | `pH_0` | before any acid                         | 6.0   | –             |
/// | `pH_x` | however much                            | 3.5   | –             |
/// | `B`    | buffer of white wheat flour             | 46.3  | mmol/kg flour |
///
/// Valid to 200 mmol/kg flour, in one laboratory's wheat dough; read it as ±0.4. Milk and wholemeal
/// buffer more: a larger `B`. Fitted to three points of PMC6950244.
///
/// ```
/// # use quantity::Amount;
/// # use science::ferment::{Stage, acidity};
/// let white = Stage::default().buffer;
/// assert_eq!(format!("{:.2}", acidity(Amount::millimoles(55.0), &white).as_ph()), "4.26");
/// ```
#[must_use]
pub fn acidity(acid: Amount, buffer: &Buffer) -> Acidity {
    buffer.end + (buffer.start - buffer.end) * exp(-(acid / buffer.scale))
}
