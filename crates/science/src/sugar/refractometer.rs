//! What to add to a refractometer's reading when the syrup is not at 20 °C.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::refractometer",
    source: "crc-handbook-sucrose",
    place: "temperature correction at 60 % sucrose; 10 °C from OIV-MA-AS2-02, Table I",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 10.0, to: 30.0 }],
};

/// Temperature in °C and points of Brix to add, for syrups of about 60 %.
const CORRECTIONS: [(f64, f64); 5] = [(10.0, -0.75), (15.0, -0.37), (20.0, 0.0), (25.0, 0.36), (30.0, 0.76)];

/// Returns the Brix of a syrup from a reading at some temperature.
///
/// ```text
/// B = B_read + c(T)      c: 10 °C −0.75, 15 °C −0.37, 20 °C 0, 25 °C +0.36, 30 °C +0.76
/// ```
///
/// | symbol   | meaning               | unit |
/// |----------|-----------------------|------|
/// | `B`      | sucrose at 20 °C      | %    |
/// | `B_read` | what the scale showed | %    |
/// | `T`      | temperature           | °C   |
///
/// For syrups of about 60 %, straight between the table's temperatures; thinner ones need up to a sixth less.
/// Outside 10 to 30 °C the last piece goes on, which is only a guess: let the drop cool on the prism.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let brix = science::sugar::refractometer::corrected(Fraction::percent(60.0), Temperature::celsius(25.0));
/// assert_eq!(format!("{:.2} %", brix.as_percent()), "60.36 %");
/// ```
#[must_use]
pub fn corrected(reading: Fraction, at: Temperature) -> Fraction {
    let t = at.as_celsius();
    let piece = CORRECTIONS.windows(2).position(|pair| t <= pair[1].0).unwrap_or(CORRECTIONS.len() - 2);
    let (cold, warm) = (CORRECTIONS[piece], CORRECTIONS[piece + 1]);
    reading + Fraction::percent(cold.1 + (warm.1 - cold.1) * (t - cold.0) / (warm.0 - cold.0))
}
