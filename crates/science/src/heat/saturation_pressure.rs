//! Saturation pressure of water vapour over liquid water.

use crate::{Equation, Standing, Valid};
use quantity::{Pressure, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::saturation_pressure",
    source: "iapws-sr1-86",
    place: "Eq. (1)",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.01, to: 373.946 }],
};

/// The critical temperature of water in kelvin.
pub(super) const CRITICAL_KELVINS: f64 = 647.096;
/// The critical pressure of water in pascal.
const CRITICAL_PASCALS: f64 = 22.064e6;
const A: [f64; 6] = [-7.859_517_83, 1.844_082_59, -11.786_649_7, 22.680_741_1, -15.961_871_9, 1.801_225_02];

/// Returns the pressure at which water of this temperature boils.
///
/// ```text
/// ln(p / p_c) = (T_c / T)·(a₁τ + a₂τ^1.5 + a₃τ³ + a₄τ^3.5 + a₅τ⁴ + a₆τ^7.5),   τ = 1 − T/T_c
/// ```
///
/// | symbol | meaning              | value   | unit |
/// |--------|----------------------|---------|------|
/// | `p`    | saturation pressure  |         | Pa   |
/// | `T`    | temperature          |         | K    |
/// | `T_c`  | critical temperature | 647.096 | K    |
/// | `p_c`  | critical pressure    | 22.064e6 | Pa  |
/// | `a`    | fitted               | −7.85951783, 1.84408259, −11.7866497, 22.6807411, −15.9618719, 1.80122502 | – |
///
/// Valid from the triple point to the critical point, within 0.03 %. Below 0 °C it goes on over
/// supercooled water; above the critical point τ is held at zero, where no vapour pressure exists.
/// IAPWS SR1-86(1992), Eq. (1); Wagner & Pruss (1993).
///
/// ```
/// # use quantity::Temperature;
/// let p = science::heat::saturation_pressure(Temperature::celsius(100.0));
/// assert_eq!(format!("{:.2} kPa", p.as_kilopascals()), "101.42 kPa");
/// ```
#[must_use]
pub fn saturation_pressure(water: Temperature) -> Pressure {
    Pressure::pascals(CRITICAL_PASCALS * libm::exp(reduced_logarithm(water.as_kelvins())))
}

fn reduced_logarithm(t: f64) -> f64 {
    let tau = (1.0 - t / CRITICAL_KELVINS).max(0.0);
    let root = tau.sqrt();
    let square = tau * tau;
    let cube = square * tau;
    let sum = A[0] * tau
        + A[1] * tau * root
        + A[2] * cube
        + A[3] * cube * root
        + A[4] * square * square
        + A[5] * cube * square * square * root;
    CRITICAL_KELVINS / t * sum
}

/// Returns how steeply the saturation pressure rises, in pascal per kelvin, by the derivative of Eq. (1).
pub(super) fn pascals_per_kelvin(water: Temperature) -> f64 {
    let t = water.as_kelvins();
    let tau = (1.0 - t / CRITICAL_KELVINS).max(0.0);
    let root = tau.sqrt();
    let (square, cube) = (tau * tau, tau * tau * tau);
    let slope = A[0]
        + 1.5 * A[1] * root
        + 3.0 * A[2] * square
        + 3.5 * A[3] * square * root
        + 4.0 * A[4] * cube
        + 7.5 * A[5] * cube * cube * root;
    let logarithm = reduced_logarithm(t);
    -CRITICAL_PASCALS * libm::exp(logarithm) / t * (logarithm + slope)
}
