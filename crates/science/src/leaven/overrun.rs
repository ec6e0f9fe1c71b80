//! How much a foam grew by the air beaten in.

use crate::{Equation, Standing, Valid};
use quantity::{Density, Fraction};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "leaven::overrun",
    source: "goff-hartel-2013",
    place: "overrun by equal volumes",
    standing: Standing::FromMemory,
    valid: &[
        Valid { symbol: "rho_0", unit: "g/ml", from: 0.8, to: 1.4 },
        Valid { symbol: "rho_1", unit: "g/ml", from: 0.1, to: 1.4 },
    ],
};

/// Returns the overrun: the growth in volume of the same mass.
///
/// ```text
/// O = rho_0 / rho_1 − 1
/// ```
///
/// | symbol  | meaning                 | unit |
/// |---------|-------------------------|------|
/// | `O`     | overrun                 | –    |
/// | `rho_0` | density before beating  | g/ml |
/// | `rho_1` | density after beating   | g/ml |
///
/// Valid for foams from meringue to butter cream; at no density the overrun is infinite.
///
/// ```
/// # use quantity::Density;
/// let g_per_ml = Density::grams_per_millilitre;
/// let cream = science::leaven::overrun::overrun(g_per_ml(0.95), g_per_ml(0.55));
/// assert_eq!(format!("{:.1} %", cream.as_percent()), "72.7 %");
/// ```
#[must_use]
pub fn overrun(before: Density, after: Density) -> Fraction {
    Fraction::ratio(before / after - 1.0)
}
