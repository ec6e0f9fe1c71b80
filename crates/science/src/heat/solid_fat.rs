//! How much of butter's fat is solid.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::solid_fat",
    source: "walstra-2006",
    place: "solid fat of milk fat against temperature, a rough curve from memory",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 5.0, to: 35.0 }],
};

/// Temperature in °C and solid share in percent.
const CURVE: [(f64, f64); 7] = [(5.0, 65.0), (10.0, 55.0), (15.0, 38.0), (20.0, 20.0), (25.0, 11.0), (30.0, 5.0), (35.0, 0.0)];

/// How far the curve may be off, by season and feed.
pub const SPREAD: Fraction = Fraction::percent(8.0);

/// Returns the solid share of milk fat, of which 15 to 25 % spreads well.
///
/// ```text
/// straight lines through (5, 65) (10, 55) (15, 38) (20, 20) (25, 11) (30, 5) (35, 0), in °C and percent
/// ```
///
/// | symbol | meaning               | unit |
/// |--------|-----------------------|------|
/// | `T`    | temperature of butter | °C   |
///
/// Within 8 points, by season and feed. Outside 5 to 35 °C the end values stay: 65 % and none.
///
/// ```
/// # use quantity::Temperature;
/// let soft = science::heat::solid_fat(Temperature::celsius(20.0));
/// assert_eq!(format!("{:.0} %", soft.as_percent()), "20 %");
/// ```
#[must_use]
pub fn solid_fat(butter: Temperature) -> Fraction {
    let t = butter.as_celsius();
    let next = CURVE.partition_point(|(at, _)| *at < t).clamp(1, CURVE.len() - 1);
    let ((t_0, y_0), (t_1, y_1)) = (CURVE[next - 1], CURVE[next]);
    Fraction::percent(y_0 + (y_1 - y_0) * ((t - t_0) / (t_1 - t_0)).clamp(0.0, 1.0))
}
